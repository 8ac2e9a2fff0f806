package polewright.report.text;

import polewright.sky.PlainNumber;

/** Turns of a screw as whole turns and sixteenths in lowest terms. */
public final class Fractions {
    private static final int PARTS = 16;

    private Fractions() {}

    /** {@code 1.375} as {@code "1 3/8"}, anything but a sixteenth as typed, {@code "1.3"}; without sign. */
    public static String of(double turns) {
        if (Math.abs(turns * PARTS - Math.rint(turns * PARTS)) > 1e-9) {
            return PlainNumber.asRead(Math.abs(turns));
        }
        long sixteenths = Math.round(Math.abs(turns) * PARTS);
        long whole = sixteenths / PARTS;
        long rest = sixteenths % PARTS;
        if (rest == 0) {
            return String.valueOf(whole);
        }
        long below = PARTS;
        while (rest % 2 == 0) {
            rest /= 2;
            below /= 2;
        }
        return (whole == 0 ? "" : whole + " ") + rest + "/" + below;
    }

    /** {@code "1 turn"}, {@code "1/2 turn"}, {@code "1 3/8 turns"}. */
    public static String turns(double turns) {
        return of(turns) + (Math.abs(turns) <= 1 ? " turn" : " turns");
    }
}
