package kerfbook.http;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Option;
import kerfbook.campaign.Settings;
import kerfbook.choice.Options;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.exposure.CampaignRates;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.store.Campaigns;
import kerfbook.store.Edit;
import kerfbook.store.NewItem;
import kerfbook.store.Stored;

/** Stored campaigns with their forecasts: nothing is kept that cannot be read again as a whole. */
public final class Plans {
    private final Campaigns campaigns;
    private final Documents documents;
    private final Basis basis;
    private static final int PLANS_AT_HAND = 4;

    private final ForecastCache<byte[]> cache = new ForecastCache<>(ForecastCache.MOST);
    private final ForecastCache<Campaign> campaignsRead = new ForecastCache<>(PLANS_AT_HAND);
    private final ForecastCache<Forecast> forecasts = new ForecastCache<>(PLANS_AT_HAND);

    public Plans(Campaigns campaigns, Basis basis) {
        this.campaigns = campaigns;
        this.documents = documents(basis);
        this.basis = basis;
    }

    /** Reads and writes documents against these tables. */
    public static Documents documents(Basis basis) {
        return new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials(), Shelf.TABLES::has);
    }

    /** The forecast of a document, kept nowhere. */
    public static Forecast forecast(byte[] document, Basis basis) {
        return forecast(documents(basis).read(document), basis);
    }

    private static Forecast forecast(Campaign campaign, Basis basis) {
        return Estimate.of(campaign, basis, Documents.digest(campaign));
    }

    Campaigns campaigns() {
        return campaigns;
    }

    Basis basis() {
        return basis;
    }

    /** Keeps a document as a new campaign, for this computer. */
    public Stored add(byte[] document) {
        return add(document, Campaigns.HERE, campaign -> { });
    }

    /** Keeps a document as a new campaign if that finds nothing against it. {@code who} asks is for the trail, as in every change below. */
    Stored add(byte[] document, String who, Consumer<Campaign> check) {
        return add(document, false, who, check);
    }

    /** Keeps a document as a new campaign that is marked as an example. */
    public Stored addDemo(byte[] document) {
        return add(document, true, Campaigns.HERE, campaign -> { });
    }

    private Stored add(byte[] document, boolean demo, String who, Consumer<Campaign> check) {
        Campaign campaign = documents.read(document);
        check.accept(campaign);
        requireUsable(campaign);
        List<NewItem> items = new ArrayList<>();
        for (Kind<?> kind : Kind.ALL) {
            List<Kind.Part> parts = kind.partsOf(campaign);
            for (int i = 0; i < parts.size(); i++) {
                items.add(item(kind, parts.get(i), kind.name() + "[" + i + "]"));
            }
        }
        String settings = text(Json.bytes(campaign.settings()));
        String name = campaign.settings().name();
        return demo ? campaigns.addDemo(name, settings, items, who) : campaigns.add(name, settings, items, who);
    }

    /** A stored campaign, read. */
    Campaign campaign(Stored stored) {
        return campaignsRead.get(stored.id(), stored.version(), () -> Draft.of(stored).campaign(documents));
    }

    /** The document of a stored campaign. */
    byte[] document(Stored stored) {
        return documents.write(campaign(stored));
    }

    /** The forecast of a stored campaign as JSON. */
    byte[] forecast(Stored stored) {
        return cache.get(stored.id(), stored.version(), () -> Json.bytes(forecastOf(stored)));
    }

    /** The forecast of a stored campaign. */
    public Forecast forecastOf(Stored stored) {
        return forecasts.get(stored.id(), stored.version(), () -> forecast(campaign(stored), basis));
    }

    /** Calculated rates of a stored campaign. */
    CampaignRates rates(Stored stored) {
        return Estimate.rates(campaign(stored), basis.units().orElseThrow());
    }

    Stored putSettings(long id, byte[] json, long seen, String who) {
        Settings settings = Json.read(json, Settings.class);
        return edit(id, who, new Edit.PutHeader(settings.name(), text(Json.bytes(settings)), seen));
    }

    Stored add(long id, Kind<?> kind, Kind.Part part, String who) {
        return edit(id, who, new Edit.AddItem(item(kind, part, "")));
    }

    Stored put(long id, Kind<?> kind, Kind.Part part, long seen, String who) {
        return edit(id, who, new Edit.PutItem(item(kind, part, ""), seen));
    }

    Stored remove(long id, Kind<?> kind, String code, long seen, String who) {
        return edit(id, who, new Edit.RemoveItem(kind.name(), code, seen));
    }

    /** An edit that the store will refuse is handed on as it is: its reason comes first. */
    private Stored edit(long id, String who, Edit edit) {
        return campaigns.edit(id, who, current -> {
            if (fits(current, edit)) {
                check(Draft.of(current).with(edit), edit);
            }
            return edit;
        });
    }

    /** Several edits together, made from this version of the campaign. */
    Stored editAll(long id, long seen, String who, List<Edit> edits) {
        return campaigns.editAll(id, seen, who, checked(edits));
    }

    /** These edits, if the campaign with them can be kept. */
    Function<Stored, List<Edit>> checked(List<Edit> edits) {
        return current -> {
            Draft draft = Draft.of(current);
            edits.forEach(draft::with);
            try {
                requireUsable(draft.campaign(documents));
            } catch (Invalid invalid) {
                throw new Refused(Problem.of(409, "The rest of the plan does not allow it. Change that first.", draft.needing(invalid)));
            }
            return edits;
        };
    }

    /** Uses the campaign as it would be with one object changed or added, or with other settings; nothing is kept. Faults are those its form would be told. */
    <T> T tried(Stored stored, String kind, byte[] value, Function<Campaign, T> use) {
        Draft draft = Draft.of(stored).with(edit(stored, kind, value));
        try {
            return use.apply(draft.campaign(documents));
        } catch (Incomplete incomplete) {
            throw new Incomplete(draft.fromWithin(incomplete).faults());
        } catch (Invalid invalid) {
            throw draft.fromWithin(invalid);
        }
    }

    private static Edit edit(Stored stored, String name, byte[] value) {
        if (name.equals("settings")) {
            Settings settings = Json.read(value, Settings.class);
            return new Edit.PutHeader(settings.name(), text(Json.bytes(settings)), stored.headerVersion());
        }
        Kind<?> kind = Kind.named(name).orElseThrow(() -> new Invalid("kind", "must be settings or a kind of object such as components. There is no \"" + name + "\"."));
        NewItem item = item(kind, kind.read(value), "");
        return stored.find(name, item.code()).<Edit>map(there -> new Edit.PutItem(item, there.version())).orElseGet(() -> new Edit.AddItem(item));
    }

    private void check(Draft draft, Edit edit) {
        try {
            Campaign after = draft.campaign(documents);
            requireUsable(after);
            requireApplicable(after, edit);
        } catch (Invalid invalid) {
            if (edit instanceof Edit.RemoveItem) {
                throw new Refused(Problem.of(409, "It is still needed. Change what refers to it first.", draft.needing(invalid)));
            }
            throw draft.fromWithin(invalid);
        }
    }

    private static boolean fits(Stored current, Edit edit) {
        if (edit instanceof Edit.PutHeader put) {
            return put.expectedVersion() == current.headerVersion();
        }
        if (edit instanceof Edit.AddItem add) {
            return current.find(add.item().kind(), add.item().code()).isEmpty();
        }
        if (edit instanceof Edit.PutItem put) {
            return current.find(put.item().kind(), put.item().code()).filter(item -> item.version() == put.expectedVersion()).isPresent();
        }
        Edit.RemoveItem remove = (Edit.RemoveItem) edit;
        return current.find(remove.kind(), remove.code()).filter(item -> item.version() == remove.expectedVersion()).isPresent();
    }

    /** A plan that is not finished may be kept; one that contradicts itself may not. */
    private void requireUsable(Campaign campaign) {
        try {
            forecast(campaign, basis);
        } catch (Incomplete tolerated) {
            return;
        }
    }

    /** An option that is written must fit the plan it is written for; one that a later plan leaves behind is told in the comparison. */
    private static void requireApplicable(Campaign campaign, Edit edit) {
        NewItem item = edit instanceof Edit.AddItem add ? add.item() : edit instanceof Edit.PutItem put ? put.item() : null;
        if (item != null && item.kind().equals("options")) {
            Option option = Json.read(item.json().getBytes(StandardCharsets.UTF_8), Option.class);
            if (option.changes().isEmpty()) {
                throw new Invalid("changes", "is empty: that is the plan itself. Add what is done in another way.");
            }
            Options.apply(campaign, option);
        }
    }

    private static NewItem item(Kind<?> kind, Kind.Part part, String field) {
        try {
            return new NewItem(kind.name(), part.code(), text(part.json()));
        } catch (Invalid invalid) {
            throw new Invalid(field, invalid.faults().get(0).detail());
        }
    }

    static String text(byte[] json) {
        return new String(json, StandardCharsets.UTF_8);
    }
}
