package polewright.bench.independent.truth;

/** How a finder truly shows the sky. */
public enum ViewShown {
    ERECT(1, 1),
    INVERTED(-1, -1),
    MIRRORED(-1, 1);

    private final int right;
    private final int up;

    ViewShown(int right, int up) {
        this.right = right;
        this.up = up;
    }

    /** The component to the right in the view of what is to the right for the naked eye. */
    double right(double right) {
        return this.right * right;
    }

    double up(double up) {
        return this.up * up;
    }
}
