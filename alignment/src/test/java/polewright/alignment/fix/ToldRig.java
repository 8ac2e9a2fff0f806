package polewright.alignment.fix;

import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;

/** The typical fork with its screw directions described by the owner. */
public final class ToldRig {
    private ToldRig() {}

    public static Rig typical() {
        Rig assumed = Rig.typicalForkOnWedge();
        return assumed.withScrews(
                assumed.azimuthScrew().withSenseConfirmed(),
                assumed.altitudeScrew().withSenseConfirmed(),
                assumed.levelSigma());
    }

    /** The same, measured: gains to 15 %, a tenth of a turn of backlash, clamps that shift the axis by 1.5′. */
    public static Rig measured() {
        Rig described = typical();
        return new Rig(
                described.name(),
                described.kind(),
                measured(described.azimuthScrew()),
                measured(described.altitudeScrew()),
                described.levelSigma(),
                Angle.ofArcminutes(1.5),
                described.optics());
    }

    private static Screw measured(Screw screw) {
        return new Screw(screw.geometry(), screw.clockwise(), 0.15, screw.handSigmaTurns(), 0.1);
    }
}
