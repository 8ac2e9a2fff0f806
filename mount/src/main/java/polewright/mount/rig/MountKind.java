package polewright.mount.rig;

/** Kinds of mount. All except the upright fork have a polar axis to set. */
public enum MountKind {
    FORK_ON_WEDGE("fork on a wedge"),
    FORK_UPRIGHT("fork set upright, without a wedge"),
    GERMAN("german equatorial"),
    TRACKER("small tracker");

    private final String words;

    MountKind(String words) {
        this.words = words;
    }

    /** The kind in plain words, lower case. */
    public String words() {
        return words;
    }

    /** Common practice: the load falls when the tilt is released. An imperative without a full stop. */
    public String weightCaution() {
        String what = this == FORK_ON_WEDGE || this == FORK_UPRIGHT ? "fork" : "mount";
        return "hold the " + what + "'s weight before you loosen the tilt clamp";
    }

    public boolean hasPolarAxis() {
        return this != FORK_UPRIGHT;
    }
}
