package polewright.axis.fix;

import polewright.axis.rig.Rig;

/** The usual fork, its owner having said which way the screws go. */
public final class ToldRig {
    private ToldRig() {}

    public static Rig typical() {
        Rig assumed = Rig.typicalForkOnWedge();
        return assumed.withScrews(
                assumed.azimuthScrew().withSenseTold(), assumed.altitudeScrew().withSenseTold(), assumed.levelSigma());
    }
}
