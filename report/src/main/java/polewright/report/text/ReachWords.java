package polewright.report.text;

import java.util.Locale;
import polewright.mount.reach.Barrier;
import polewright.sky.angle.Angle;

/** Why the tube cannot reach a direction, in a few words. */
public final class ReachWords {
    private ReachWords() {}

    /** A phrase without a full stop: {@code behind the skyline (12° up, the skyline 20°)}. */
    public static String of(Barrier barrier) {
        return barrier.accept(new Reason());
    }

    private static String degrees(Angle angle) {
        return Math.round(angle.degrees()) + "°";
    }

    private static String signed(Angle angle) {
        return String.format(Locale.ROOT, "%+.0f°", angle.degrees());
    }

    private static final class Reason implements Barrier.Visitor<String> {
        @Override
        public String belowHorizon(Barrier.BelowHorizon barrier) {
            return "below the horizon";
        }

        @Override
        public String behindSkyline(Barrier.BehindSkyline hidden) {
            return "behind the skyline (" + degrees(hidden.altitude()) + " up, the skyline " + degrees(hidden.skyline())
                    + ")";
        }

        @Override
        public String tooLow(Barrier.TooLow low) {
            return "too low (" + degrees(low.altitude()) + ", your lower limit is " + degrees(low.lowest()) + ")";
        }

        @Override
        public String strikesFork(Barrier.StrikesFork strikes) {
            return (strikes.part() == Barrier.End.BACK ? "what is behind the tube" : "the tube's front")
                    + " would strike the fork beyond " + signed(strikes.farthest());
        }

        @Override
        public String cablesEnd(Barrier.CablesEnd cables) {
            return "the RA travel ends at "
                    + String.format(
                            Locale.ROOT, "%.1f h", cables.farthest().abs().hours())
                    + (cables.farthest().radians() < 0 ? " east" : " west");
        }
    }
}
