package polewright.planning.tonight;

import polewright.mount.rig.Rig;

/** The purpose of the telescope tonight. */
public enum Purpose {
    EYES,
    CAMERA;

    /** Camera, if the rig has one. */
    public static Purpose usual(Rig rig) {
        return rig.cameras().isEmpty() ? EYES : CAMERA;
    }
}
