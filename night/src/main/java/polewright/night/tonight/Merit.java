package polewright.night.tonight;

import polewright.sky.angle.Angle;

/**
 * How well worth looking at a target is, from 0 to 1: a product of parts, each monotone in what it is named for.
 *
 * <ul>
 *   <li><b>height</b>: the sine of its altitude, the inverse of the air looked through;
 *   <li><b>brightness</b>: from 1 at magnitude 4 and brighter down to 0.02 at 14; 0.1 when not known;
 *   <li><b>contrast</b>: its surface over its surface and a third of the sky's; 0.5 for what has none; planets 1;
 *   <li><b>renown</b>: 1 for Messier's, 0.75 with a common name, 0.4 for the rest: catalogues give nebulae the magnitudes
 *       of the stars in them, and a list by figures alone would be headed by them;
 *   <li><b>fit</b>: full when its longest extent is a tenth of the field to eight tenths, less when smaller, and when it
 *       is larger than the field in the ratio of the two.
 * </ul>
 *
 * The weights are ours: they put objects of the usual observing lists first in the usual order (common practice).
 */
final class Merit {
    private static final double SMALL = 0.1;
    private static final double LARGE = 0.8;
    private static final double BRIGHT = 4;
    private static final double FAINT = 14;
    private static final double LEAST = 0.02;

    private Merit() {}

    static double of(Target target, Angle altitude, double skyMagnitude, Angle field) {
        return Math.max(0, altitude.sin())
                * brightness(target)
                * contrast(target, skyMagnitude)
                * renown(target)
                * fit(target, field);
    }

    private static double renown(Target target) {
        return switch (target.renown()) {
            case FAMOUS -> 1;
            case NAMED -> 0.75;
            case LISTED -> 0.4;
        };
    }

    private static double brightness(Target target) {
        if (target.isBrightBody()) {
            return 1;
        }
        if (target.magnitude().isEmpty()) {
            return 0.1;
        }
        double share = (FAINT - target.magnitude().getAsDouble()) / (FAINT - BRIGHT);
        return Math.max(LEAST, Math.min(1, share));
    }

    private static double contrast(Target target, double skyMagnitude) {
        if (target.isBrightBody()) {
            return 1;
        }
        if (target.surfaceBrightness().isEmpty()) {
            return 0.5;
        }
        double ratio =
                Math.pow(10, 0.4 * (skyMagnitude - target.surfaceBrightness().getAsDouble()));
        return ratio / (ratio + 1 / 3.0);
    }

    private static double fit(Target target, Angle field) {
        double share = target.major().radians() / field.radians();
        if (target.isBrightBody()) {
            return 0.8;
        }
        if (share > LARGE) {
            return LARGE / share;
        }
        return share >= SMALL ? 1 : 0.3 + 0.7 * share / SMALL;
    }
}
