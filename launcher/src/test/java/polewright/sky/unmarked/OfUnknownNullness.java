package polewright.sky.unmarked;

/** A class in a package without a nullness default. */
public final class OfUnknownNullness {
    private OfUnknownNullness() {}
}
