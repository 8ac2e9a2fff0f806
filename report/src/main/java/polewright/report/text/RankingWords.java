package polewright.report.text;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.RankedSighting;
import polewright.alignment.advice.SightingKind;

/** The possible next sightings, in words. */
public final class RankingWords {
    private RankingWords() {}

    /**
     * A heading and the best of each kind, the most useful first; empty if there is none.
     *
     * @param advice if it is to stop, possible sightings are not listed
     */
    public static List<String> of(List<RankedSighting> ranking, Advice advice) {
        if (advice instanceof Advice.Stop) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        Set<SightingKind> told = EnumSet.noneOf(SightingKind.class);
        for (RankedSighting sighting : ranking) {
            if (told.add(sighting.kind())) {
                lines.add("      " + told.size() + ". " + what(sighting) + ": " + TimeSpans.about(sighting.minutes())
                        + " in all, " + AdviceWords.percent(sighting.probabilityAfter()) + ".");
            }
        }
        if (!lines.isEmpty()) {
            lines.add(
                    0,
                    "RANK  Possible next sightings, best gain per minute first. The percentage is the chance of being"
                            + " good enough after it and the turn that follows:");
        }
        return lines;
    }

    private static String what(RankedSighting sighting) {
        return words(sighting.kind(), sighting.star())
                + (sighting.watch().isZero() ? "" : ", watched for " + TimeSpans.of(sighting.watch()));
    }

    /** A sighting in a few words. */
    static String words(SightingKind kind, Optional<AdvisedStar> star) {
        boolean isDrift = kind == SightingKind.DRIFT_ON_MERIDIAN || kind == SightingKind.DRIFT_EAST_OR_WEST;
        return star.map(named -> (isDrift ? "a drift on " : words(kind) + " by ") + named.name())
                .orElseGet(() -> words(kind));
    }

    private static String words(SightingKind kind) {
        return switch (kind) {
            case COMPASS -> "the compass";
            case SHADOW -> "the shadow of a plumb line";
            case LEVEL_AND_SCALE -> "level and scale";
            case STILL_POINT -> "the centre of rotation";
            case DRIFT_ON_MERIDIAN -> "a drift near the meridian";
            case DRIFT_EAST_OR_WEST -> "a drift in the east or west";
            case FRAMES -> "camera frames";
        };
    }
}
