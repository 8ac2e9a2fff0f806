package polewright.night.tonight;

/** What is done with the telescope tonight. */
public enum Purpose {
    EYES,
    CAMERA
}
