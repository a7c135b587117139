package kerfbook.outlook;

/**
 * Random numbers that are a function of seed, name of the input and number of the trial, and of nothing else: whatever else is drawn, on
 * however many threads, an input keeps its draws.
 *
 * <pre>
 *   bits(trial) = mix(key + (trial + 1) · γ),   γ = 9e3779b97f4a7c15 (hexadecimal),   key = mix(text + mix(seed + γ)),
 *   mix(z): z ← (z ⊕ z≫30) · bf58476d1ce4e5b9;  z ← (z ⊕ z≫27) · 94d049bb133111eb;  z ⊕ z≫31
 * </pre>
 * with text the FNV-1a hash of the name in 64 bits. Source of mix and γ: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom
 * number generators", OOPSLA 2014 (constants of D. Stafford's variant 13). Two inputs walk through the same cycle of 2⁶⁴ numbers from places
 * that the hash picks; that 10 000 inputs of a million trials meet anywhere has a chance of about 10⁻⁵.
 */
final class Draw {
    static final long STRIDE = 0x9e3779b97f4a7c15L;
    /** Makes a part of 1 of 53 bits. */
    static final double UNIT = 0x1.0p-53;
    private static final long FNV_START = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private Draw() { }

    static long text(String name) {
        long hash = FNV_START;
        for (int i = 0; i < name.length(); i++) {
            hash = (hash ^ (name.charAt(i) & 0xff)) * FNV_PRIME;
            hash = (hash ^ (name.charAt(i) >>> 8)) * FNV_PRIME;
        }
        return hash;
    }

    static long key(long seed, long text) {
        return mix(text + mix(seed + STRIDE));
    }

    static long bits(long key, long trial) {
        return mix(key + (trial + 1) * STRIDE);
    }

    /** Above 0 and below 1: the middles of 2⁵² equal parts. */
    static double uniform(long key, long trial) {
        return ((bits(key, trial) >>> 12) + 0.5) * 0x1.0p-52;
    }

    static long mix(long z) {
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
