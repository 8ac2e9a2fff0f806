package polewright.alignment.fix;

import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;

/** The usual fork, its owner having said which way the screws go. */
public final class ToldRig {
    private ToldRig() {}

    public static Rig typical() {
        Rig assumed = Rig.typicalForkOnWedge();
        return assumed.withScrews(
                assumed.azimuthScrew().withSenseConfirmed(),
                assumed.altitudeScrew().withSenseConfirmed(),
                assumed.levelSigma());
    }

    /** The same, measured: what the screws do to 15 %, a tenth of a turn of play, clamps that shift the axis by 1.5′. */
    public static Rig measured() {
        Rig told = typical();
        return new Rig(
                told.name(),
                told.kind(),
                measured(told.azimuthScrew()),
                measured(told.altitudeScrew()),
                told.levelSigma(),
                Angle.ofArcminutes(1.5),
                told.optics());
    }

    private static Screw measured(Screw screw) {
        return new Screw(screw.geometry(), screw.clockwise(), 0.15, screw.handSigmaTurns(), 0.1);
    }
}
