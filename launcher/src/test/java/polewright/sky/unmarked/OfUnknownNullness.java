package polewright.sky.unmarked;

/** Lives in a package that does not say what may be null. */
public final class OfUnknownNullness {
    private OfUnknownNullness() {}
}
