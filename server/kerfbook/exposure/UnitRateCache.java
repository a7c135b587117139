package kerfbook.exposure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;
import kerfbook.shielding.DoseQuantity;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Nuclide;
import kerfbook.shielding.PhotonData;
import kerfbook.shielding.PointKernel;
import kerfbook.shielding.Position;
import kerfbook.shielding.Progeny;
import kerfbook.shielding.Source;

/**
 * Unit rates that have been integrated once are not integrated again: they depend on shape, layers, point and nuclides, never
 * on dates. An answer is the same with and without what is remembered. Safe for several threads.
 */
public final class UnitRateCache {
    /** Numerical error asked for in area rates; the method itself is good to some 10 to 30 %. What comes out is mostly far better. */
    public static final double TOLERANCE = 0.02;
    private static final int MOST = 20_000;

    private record Key(Source source, List<Layer> layers, Position point, Set<String> nuclides) { }

    private final PhotonData data;
    private final Map<String, Nuclide> nuclides;
    private final List<Progeny> progeny;
    private final PointKernel kernel;
    private final Map<Key, UnitPart> known = new LinkedHashMap<>(256, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, UnitPart> eldest) {
            return size() > MOST;
        }
    };
    private final AtomicLong asked = new AtomicLong();
    private final AtomicLong integrated = new AtomicLong();

    public UnitRateCache(PhotonData data, Map<String, Nuclide> nuclides, List<Progeny> progeny) {
        this.data = data;
        this.nuclides = Map.copyOf(nuclides);
        this.progeny = List.copyOf(progeny);
        this.kernel = new PointKernel(data, nuclides);
    }

    /** Unit rates of a source at a point, also of what grows in from the nuclides named. */
    public UnitPart of(Source source, List<Layer> layers, Position point, Set<String> names) {
        asked.incrementAndGet();
        Key key = new Key(source, layers, point, names);
        UnitPart found;
        synchronized (known) {
            found = known.get(key);
        }
        if (found == null) {
            found = new UnitPart(kernel.unitRates(source, layers, point, withProgeny(names), DoseQuantity.AMBIENT_DOSE_EQUIVALENT, TOLERANCE), this);
            integrated.incrementAndGet();
            synchronized (known) {
                known.put(key, found);
            }
        }
        return found;
    }

    private Set<String> withProgeny(Set<String> names) {
        Set<String> all = new TreeSet<>(names);
        progeny.stream().filter(pair -> names.contains(pair.parent())).forEach(pair -> all.add(pair.child()));
        return all;
    }

    /** Activity after some days, with what has grown in. */
    Inventory after(Inventory inventory, double days) {
        return inventory.after(days, nuclides, progeny);
    }

    boolean hasProgeny(Set<String> names) {
        return progeny.stream().anyMatch(pair -> names.contains(pair.parent()));
    }

    public PhotonData data() {
        return data;
    }

    public Map<String, Nuclide> nuclides() {
        return nuclides;
    }

    public PointKernel kernel() {
        return kernel;
    }

    /** How often unit rates were asked for. */
    public long asked() {
        return asked.get();
    }

    /** How many integrals were worked out for that. */
    public long integrated() {
        return integrated.get();
    }
}
