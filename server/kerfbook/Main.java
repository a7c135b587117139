package kerfbook;

import kerfbook.cli.Commands;

/** Starts Kerfbook. */
public final class Main {
    private Main() { }

    public static void main(String[] args) {
        int code = new Commands(System.out, System.err).run(args);
        if (code != 0) {
            System.exit(code);
        }
    }
}
