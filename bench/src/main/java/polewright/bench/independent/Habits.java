package polewright.bench.independent;

import polewright.axis.sighting.ReticleNorth;
import polewright.bench.independent.truth.ReticleLine;

/**
 * How a person works all night.
 *
 * @param line how they set a reticle
 * @param lineTold whether they say so
 * @param scatter how much larger their errors are than the documents say
 */
record Habits(ReticleLine line, boolean lineTold, double scatter) {
    /** A reticle set by a star's trail, told; errors as documented. */
    static final Habits USUAL = new Habits(ReticleLine.BY_TRAIL, true, 1);

    ReticleNorth north() {
        if (!lineTold) {
            return ReticleNorth.NOT_TOLD;
        }
        return line == ReticleLine.BY_TRAIL ? ReticleNorth.SKY : ReticleNorth.MOUNT;
    }
}
