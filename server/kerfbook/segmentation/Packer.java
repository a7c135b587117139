package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Puts the parts of a layout into packages. */
final class Packer {
    private final Job job;
    private final Capacity capacity;

    Packer(Job job, Capacity capacity) {
        this.job = job;
        this.capacity = capacity;
    }

    /** No packing needs fewer: by number for the room, by mass for the capacity; exact where all parts are equal. */
    int least(Layout layout, int roomFor) {
        int pieces = layout.pieces();
        if (layout.parts().size() == 1) {
            return divideUp(pieces, Math.min(roomFor, capacity.of(kg(layout.parts().get(0)))));
        }
        double total = 0;
        for (Layout.Part part : layout.parts()) {
            total += part.count() * kg(part);
        }
        return Math.max(divideUp(pieces, roomFor), (int) Math.ceil(total / capacity.kg() - 1e-9));
    }

    Packed pack(Layout layout, int roomFor) {
        List<Packed.Filled> loads = layout.parts().size() == 1 ? equal(layout.parts().get(0), roomFor) : unequal(layout, roomFor);
        Packed.Filled fullest = loads.get(0);
        boolean takesMore = fullest.pieces() < roomFor && capacity.takes(fullest.massKg() + layout.smallestMm3() * job.kgPerMm3());
        Optional<Bound> binds = takesMore ? Optional.empty() : Optional.of(fullest.pieces() >= roomFor ? Bound.PACKAGE_SIZE : capacity.binds());
        return new Packed(loads, roomFor, capacity.kg(), binds, least(layout, roomFor), layout.parts().size() > 1);
    }

    private List<Packed.Filled> equal(Layout.Part part, int roomFor) {
        int each = Math.min(Math.min(roomFor, capacity.of(kg(part))), part.count());
        List<Packed.Filled> loads = new ArrayList<>();
        loads.add(filled(part.count() / each, each, each * kg(part), roomFor));
        if (part.count() % each > 0) {
            loads.add(filled(1, part.count() % each, part.count() % each * kg(part), roomFor));
        }
        return loads;
    }

    /** First fit, heaviest first. */
    private List<Packed.Filled> unequal(Layout layout, int roomFor) {
        List<Layout.Part> parts = new ArrayList<>(layout.parts());
        parts.sort(Comparator.comparingDouble(Layout.Part::metalMm3).reversed());
        List<double[]> open = new ArrayList<>();
        for (Layout.Part part : parts) {
            for (int i = 0; i < part.count(); i++) {
                double[] box = firstThatTakes(open, kg(part), roomFor);
                box[0]++;
                box[1] += kg(part);
            }
        }
        open.sort(Comparator.<double[]>comparingDouble(box -> box[1]).reversed());
        return open.stream().map(box -> filled(1, (int) box[0], box[1], roomFor)).toList();
    }

    private double[] firstThatTakes(List<double[]> open, double kg, int roomFor) {
        for (double[] box : open) {
            if (box[0] < roomFor && capacity.takes(box[1] + kg)) {
                return box;
            }
        }
        double[] box = {0, 0};
        open.add(box);
        return box;
    }

    private Packed.Filled filled(int packages, int pieces, double kg, int roomFor) {
        double metalM3 = kg / job.kgPerMm3() / 1e9;
        return new Packed.Filled(packages, pieces, kg, job.activityOf(kg), kg / capacity.kg(), (double) pieces / roomFor,
            metalM3 / job.bounds().container().innerVolumeM3());
    }

    private double kg(Layout.Part part) {
        return part.metalMm3() * job.kgPerMm3();
    }

    private static int divideUp(int number, int by) {
        return (number + by - 1) / by;
    }
}
