package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import polewright.axis.advice.RankedSighting;
import polewright.axis.advice.SightingKind;

/** The sightings that could be taken next, in words. */
public final class RankingWords {
    private static final int MOST = 5;

    private RankingWords() {}

    /** A heading and a line for each, the most worth while first; nothing when there is none. */
    public static List<String> of(List<RankedSighting> ranking) {
        List<String> lines = new ArrayList<>();
        if (!ranking.isEmpty()) {
            lines.add("RANK  Sightings that could come next, the most gain a minute first:");
        }
        int number = 1;
        for (RankedSighting sighting : ranking.subList(0, Math.min(MOST, ranking.size()))) {
            lines.add("      " + number++ + ". " + what(sighting) + ": "
                    + TimeSpans.about(sighting.minutes()) + " in all, then good enough with "
                    + AdviceWords.percent(sighting.probabilityAfter()) + ".");
        }
        return lines;
    }

    private static String what(RankedSighting sighting) {
        return words(sighting.kind())
                + sighting.star().map(star -> ", " + star.name()).orElse("")
                + (sighting.watch().isZero()
                        ? ""
                        : ", watched for " + TimeSpans.about(sighting.watch().toMinutes()));
    }

    private static String words(SightingKind kind) {
        return switch (kind) {
            case COMPASS -> "the compass";
            case SHADOW -> "the shadow of a plumb line";
            case LEVEL_AND_SCALE -> "level and scale";
            case STILL_POINT -> "the still point";
            case DRIFT_ON_MERIDIAN -> "a drift near the meridian";
            case DRIFT_EAST_OR_WEST -> "a drift in the east or west";
            case FRAMES -> "camera frames";
        };
    }
}
