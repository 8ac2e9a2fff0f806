package polewright.axis.fix;

import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;

/** The usual fork's figures as those of a rig that somebody told: by a hair not the ones that are assumed of any rig. */
public final class ToldRig {
    private static final double HAIR = 1e-12;

    private ToldRig() {}

    public static Rig typical() {
        Rig assumed = Rig.typicalForkOnWedge();
        Screw azimuth = assumed.azimuthScrew();
        return assumed.withScrews(
                new Screw(
                        azimuth.geometry(),
                        azimuth.clockwise(),
                        azimuth.relativeGainSigma(),
                        azimuth.handSigmaTurns() + HAIR,
                        azimuth.backlashTurns(),
                        azimuth.finish()),
                assumed.altitudeScrew(),
                assumed.levelSigma());
    }
}
