package polewright.image.match;

/**
 * A frame's pattern identified with one of the atlas: which detections are which stars.
 *
 * @param detection0 the star whose pattern it is; then the farthest, the first and the second of its code
 * @param rank0 its rank in the index; the others in the same order
 */
record Hypothesis(
        int detection0, int detection1, int detection2, int detection3, int rank0, int rank1, int rank2, int rank3) {
    static final int STARS = 4;

    int detection(int role) {
        return switch (role) {
            case 0 -> detection0;
            case 1 -> detection1;
            case 2 -> detection2;
            default -> detection3;
        };
    }

    int rank(int role) {
        return switch (role) {
            case 0 -> rank0;
            case 1 -> rank1;
            case 2 -> rank2;
            default -> rank3;
        };
    }

    boolean holdsDetection(int index) {
        return index == detection0 || index == detection1 || index == detection2 || index == detection3;
    }
}
