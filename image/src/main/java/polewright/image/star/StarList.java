package polewright.image.star;

import java.util.List;

/**
 * The stars of one frame.
 *
 * @param width of the frame, pixels
 * @param height of the frame, pixels
 * @param stars brightest first
 */
public record StarList(int width, int height, List<FoundStar> stars) {
    public StarList {
        stars = List.copyOf(stars);
    }

    public int size() {
        return stars.size();
    }
}
