package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Change;
import kerfbook.campaign.Component;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;

/** A source that is cleaned before work starts. */
final class Cleaning {
    private Cleaning() { }

    /**
     * One source is cleaned before work starts. It is split in two: what stays, {@code 1 − share + share / factor}, and what goes, which ends on the day
     * before the start; surveys made before then still find both.
     */
    static Campaign apply(Campaign campaign, Change change) {
        String code = change.source().orElseThrow();
        Source source = campaign.sources().stream().filter(each -> each.code().equals(code)).findFirst()
            .orElseThrow(() -> Options.refused("source", "there is no source \"" + code + "\" in this campaign."));
        if (source.component().flatMap(campaign::component).filter(Component::calculable).isPresent() && campaign.areas().stream().anyMatch(area -> area.rateFrom().worked())) {
            throw Options.refused("source", "stands for the activity in the metal of " + source.component().get() + ", which cleaning does not take off. Give what is loose on it as a source with a body of its own.");
        }
        double share = change.share().orElse(1.0);
        double stays = 1 - share + share / change.factor().orElseThrow();
        if (stays == 1) {
            return campaign;
        }
        if (source.endsOn().filter(end -> end.isBefore(campaign.settings().start())).isPresent()) {
            throw Options.refused("source", "has ended before work starts.");
        }
        String goes = Options.free(code + "-off", codes(campaign));
        List<Source> sources = new ArrayList<>();
        for (Source each : campaign.sources()) {
            sources.add(each == source ? source.part(stays) : each);
        }
        sources.add(source.part(1 - stays).as(goes, source.name() + ", cleaned off", campaign.settings().start().minusDays(1)));
        return campaign.sourced(sources, campaign.surveys().stream().map(survey -> split(survey, code, goes, stays)).toList());
    }

    private static Survey split(Survey survey, String code, String goes, double stays) {
        if (survey.shares().stream().noneMatch(share -> share.source().equals(code))) {
            return survey;
        }
        List<Survey.SourceShare> shares = new ArrayList<>();
        for (Survey.SourceShare share : survey.shares()) {
            if (share.source().equals(code)) {
                shares.add(new Survey.SourceShare(code, share.share() * stays));
                shares.add(new Survey.SourceShare(goes, share.share() * (1 - stays)));
            } else {
                shares.add(share);
            }
        }
        return survey.sharing(shares);
    }

    private static Set<String> codes(Campaign campaign) {
        Set<String> codes = campaign.sources().stream().map(Source::code).collect(Collectors.toSet());
        campaign.components().forEach(component -> codes.add(component.code()));
        return codes;
    }
}
