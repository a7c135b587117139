package kerfbook.protection;

/** Classification of an exposed worker: B up to the ceilings of the rule set, A above them. */
public enum Category {
    A, B
}
