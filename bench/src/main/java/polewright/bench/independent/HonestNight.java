package polewright.bench.independent;

import java.util.List;
import polewright.alignment.advice.SightingKind;
import polewright.bench.independent.truth.ReticleLine;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.Orientation;

/** A night of a person who states and logs everything correctly, with errors as documented or larger. */
final class HonestNight {
    private static final double LARGEST_OFFSET_DEG = 5;
    private static final double ALLOWANCE_ARCMIN = 5;
    private static final int HABITS = 4;

    private HonestNight() {}

    /**
     * The habits for a seed: a reticle set by the trail or by slow motion, stated or not; every third reads a compass
     * first.
     */
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
     * Latitudes −65° to 65°, offsets up to 5° in each direction, a rig measured by ruler.
     *
     * @param scatter errors relative to the documented ones
     */
    static PlayedNight played(long seed, double scatter) {
        Scene scene = Scene.drawn(seed, 0, LARGEST_OFFSET_DEG);
        TrueWedge screws = TrueWedge.asStated(scene.random());
        Wedge wedge = screws.at(scene);
        Told truly = Told.truly(scene, screws.statedByRuler(Orientation.INVERTED));
        return Person.play(scene, wedge, truly, habits(seed).erring(scatter), ALLOWANCE_ARCMIN);
    }
}
