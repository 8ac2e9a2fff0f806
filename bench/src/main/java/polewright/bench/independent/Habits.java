package polewright.bench.independent;

import java.util.List;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.ReticleNorth;
import polewright.bench.independent.truth.ReticleLine;

/**
 * How a person works all night.
 *
 * @param line how they set a reticle
 * @param lineTold whether they say so
 * @param first what they take before they ask for advice: {@code COMPASS}, {@code STILL_POINT}
 * @param correcting whether they correct a mistake when it is named to them
 * @param scatter how much larger their errors are than the documents say
 */
record Habits(ReticleLine line, boolean lineTold, List<SightingKind> first, boolean correcting, double scatter) {
    Habits {
        first = List.copyOf(first);
    }

    /** A reticle set by a star's trail, told; errors as documented. */
    static final Habits USUAL = new Habits(ReticleLine.BY_TRAIL, true, List.of(), false, 1);

    Habits taking(SightingKind first) {
        return new Habits(line, lineTold, List.of(first), correcting, scatter);
    }

    Habits correcting(boolean isSo) {
        return new Habits(line, lineTold, first, isSo, scatter);
    }

    Habits erring(double timesAsDocumented) {
        return new Habits(line, lineTold, first, correcting, timesAsDocumented);
    }

    ReticleNorth north() {
        if (!lineTold) {
            return ReticleNorth.NOT_TOLD;
        }
        return line == ReticleLine.BY_TRAIL ? ReticleNorth.SKY : ReticleNorth.MOUNT;
    }
}
