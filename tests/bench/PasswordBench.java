package bench;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import kerfbook.access.Passwords;

/** What one password costs at full strength, on the clock and of the processor: {@code java -cp … bench.PasswordBench}. */
public final class PasswordBench {
    private static final int TIMES = 15;

    private PasswordBench() { }

    public static void main(String[] args) {
        Passwords passwords = new Passwords(Passwords.USUAL);
        double[] clock = new double[TIMES];
        double[] processor = new double[TIMES];
        for (int i = -5; i < TIMES; i++) {
            long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            long start = System.nanoTime();
            passwords.hash("correct horse battery staple");
            if (i >= 0) {
                clock[i] = (System.nanoTime() - start) / 1e6;
                processor[i] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e6;
            }
        }
        Arrays.sort(clock);
        Arrays.sort(processor);
        System.out.printf(Locale.ROOT, "Argon2id %s: median %.0f, longest %.0f ms; processor of its thread median %.0f ms%n", Passwords.USUAL, clock[TIMES / 2], clock[TIMES - 1],
            processor[TIMES / 2]);
    }
}
