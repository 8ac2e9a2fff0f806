package polewright.mount.rig;

/** Which screw is turned first; on many wedges loosening for the one disturbs the other. */
public enum ScrewOrder {
    ALTITUDE_FIRST,
    AZIMUTH_FIRST
}
