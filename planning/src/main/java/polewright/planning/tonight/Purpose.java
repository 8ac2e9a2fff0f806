package polewright.planning.tonight;

import polewright.mount.rig.Rig;

/** What is done with the telescope tonight. */
public enum Purpose {
    EYES,
    CAMERA;

    /** The camera's, if the rig has one. */
    public static Purpose usual(Rig rig) {
        return rig.cameras().isEmpty() ? EYES : CAMERA;
    }
}
