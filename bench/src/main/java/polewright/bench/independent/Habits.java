package polewright.bench.independent;

import java.util.List;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.ReticleNorth;
import polewright.bench.independent.truth.ReticleLine;

/**
 * How a person works all night.
 *
 * @param line how they set a reticle
 * @param lineStated whether they state it
 * @param first what they take before the first advice: {@code COMPASS}, {@code STILL_POINT}
 * @param correcting whether they correct a mistake when it is named to them
 * @param scatter their errors relative to the documented ones
 */
record Habits(ReticleLine line, boolean lineStated, List<SightingKind> first, boolean correcting, double scatter) {
    Habits {
        first = List.copyOf(first);
    }

    /** A reticle set by a star's trail, and stated; errors as documented. */
    static final Habits USUAL = new Habits(ReticleLine.BY_TRAIL, true, List.of(), false, 1);

    Habits taking(SightingKind first) {
        return new Habits(line, lineStated, List.of(first), correcting, scatter);
    }

    Habits correcting(boolean isSo) {
        return new Habits(line, lineStated, first, isSo, scatter);
    }

    Habits erring(double timesAsDocumented) {
        return new Habits(line, lineStated, first, correcting, timesAsDocumented);
    }

    ReticleNorth north() {
        if (!lineStated) {
            return ReticleNorth.NOT_TOLD;
        }
        return line == ReticleLine.BY_TRAIL ? ReticleNorth.SKY : ReticleNorth.MOUNT;
    }
}
