package polewright.image.star;

import polewright.image.Frame;

/**
 * Makes cutouts of stars from one frame.
 *
 * @param frame the frame
 * @param mesh its background
 * @param full saturation value
 * @param hot pixels to ignore
 * @param sharedNoise factor by which correlation between pixels raises the noise after filtering, at least one
 */
record CutoutMaker(Frame frame, BackgroundMesh mesh, float full, HotPixels hot, double sharedNoise) {
    Cutout about(int x, int y, int reachX, int reachY) {
        return Cutout.about(this, x, y, reachX, reachY);
    }
}
