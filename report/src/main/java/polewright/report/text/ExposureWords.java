package polewright.report.text;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import polewright.alignment.allowance.ExposureLimits;
import polewright.alignment.allowance.ExposureLimits.Limit;
import polewright.session.ExposureOutlook;

/** The longest exposures now, and whether one more adjustment would be worthwhile. */
public final class ExposureWords {
    private ExposureWords() {}

    /** Two or three lines for each imaging run. */
    public static List<String> of(List<ExposureOutlook> shots) {
        List<String> lines = new ArrayList<>();
        for (ExposureOutlook outlook : shots) {
            lines.add("SHOT  " + outlook.shot().name() + " ("
                    + TimeSpans.of(outlook.shot().subExposure())
                    + " wanted): with the axis as it is, stars stay round for "
                    + both(outlook.now())
                    + ".");
            lines.add("      " + next(outlook));
        }
        return lines;
    }

    private static String next(ExposureOutlook outlook) {
        if (outlook.isLongEnough()) {
            return "That is long enough. No need to adjust further.";
        }
        return outlook.next()
                .map(after -> outlook.isWorthAdjusting()
                        ? "One more adjustment, about " + work(after.minutes()) + " work: " + both(after.limit()) + "."
                        : "One more adjustment would hardly help: not worth about " + work(after.minutes())
                                + " work. Shorten the exposure.")
                .orElse("The gain from more adjustment is not known yet.");
    }

    private static String work(double minutes) {
        String time = TimeSpans.about(minutes);
        return time.endsWith("s") ? time + "'" : time + "'s";
    }

    private static String both(Limit limit) {
        return span(limit.unguided()) + " unguided, " + span(limit.guided()) + " guided";
    }

    private static String span(Duration longest) {
        if (longest.isZero()) {
            return "0 s";
        }
        return longest.compareTo(ExposureLimits.LONGEST) >= 0
                ? "over " + TimeSpans.of(ExposureLimits.LONGEST)
                : TimeSpans.atMost(longest);
    }
}
