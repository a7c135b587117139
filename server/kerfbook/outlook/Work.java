package kerfbook.outlook;

import java.util.ArrayList;
import java.util.List;

/** A task as it is drawn. Times in whole millionths of an hour, held in doubles, so that their sums are exact. */
final class Work {
    /** Millionths of an hour in an hour. */
    static final double TICKS = 1e6;

    /** How a step's hours come about. */
    enum Kind { COUNTED, SHIFTS, FAULTS }

    static final class Step {
        Kind kind = Kind.COUNTED;
        /** Hours by the forecast; of a step counted in shifts or faults, for one of them. */
        double hours;
        boolean alongside;
        int shared;
        /** Empty where the hours for one unit are known. */
        Pert each;
        double width;
        long text;
        Staffing staffing;
        /** Position among those of many steps, −1 if it is none of them. */
        int staffed;
        /** Which faults it clears, each in hours of its own. */
        int[] faults;
    }

    int place;
    double notBefore;
    int[] before;
    double[] lag;
    final List<Step> steps = new ArrayList<>();
    boolean shifts;
    boolean weekly;
    boolean ofComponent;
    /** Positions, −1 where it has none. */
    int group;
    int component;
    int technique;
    int[] targets;
    /** Part still to do. */
    double remaining = 1;
    double receivedUsv;
}
