package polewright.bench.independent;

import java.util.List;
import polewright.alignment.advice.SightingKind;
import polewright.bench.independent.truth.ReticleLine;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.Orientation;

/** A night of someone who tells and writes everything as it is, with errors as documented or larger. */
final class HonestNight {
    private static final double LARGEST_OFFSET_DEG = 5;
    private static final double ALLOWANCE_ARCMIN = 5;
    private static final int HABITS = 4;

    private HonestNight() {}

    /** How the person of a seed works: a reticle by the trail or by slow motion, told or not; every third reads a compass first. */
    static Habits habits(long seed) {
        int habit = (int) Math.floorMod(seed / 2, (long) HABITS);
        return new Habits(
                habit % 2 == 0 ? ReticleLine.BY_TRAIL : ReticleLine.BY_SLOW_MOTION,
                habit < HABITS / 2,
                seed % 3 == 0 ? List.of(SightingKind.COMPASS) : List.of(),
                false,
                1);
    }

    /**
     * Latitudes −65° to 65°, offsets to 5° a side, a rig told by ruler.
     *
     * @param scatter how much larger errors are than documented
     */
    static PlayedNight played(long seed, double scatter) {
        Scene scene = Scene.drawn(seed, 0, LARGEST_OFFSET_DEG);
        TrueWedge screws = TrueWedge.asTold(scene.random());
        Wedge wedge = screws.at(scene);
        Told truly = Told.truly(scene, screws.toldByRuler(Orientation.INVERTED));
        return Person.play(scene, wedge, truly, habits(seed).erring(scatter), ALLOWANCE_ARCMIN);
    }
}
