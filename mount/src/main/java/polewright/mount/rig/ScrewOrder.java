package polewright.mount.rig;

/** Which screw is turned first. On many wedges, loosening one disturbs the other. */
public enum ScrewOrder {
    ALTITUDE_FIRST,
    AZIMUTH_FIRST
}
