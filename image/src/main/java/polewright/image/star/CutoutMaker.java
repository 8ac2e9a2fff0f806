package polewright.image.star;

import polewright.image.Frame;

/**
 * Cuts stars out of one frame.
 *
 * @param frame the frame
 * @param mesh its sky
 * @param full value at and above which a pixel is full
 * @param hot pixels that do not count
 * @param sharedNoise how much more of the sky's noise passes a filter than if each pixel had its own, at least one
 */
record CutoutMaker(Frame frame, BackgroundMesh mesh, float full, HotPixels hot, double sharedNoise) {
    Cutout about(int x, int y, int reachX, int reachY) {
        return Cutout.about(this, x, y, reachX, reachY);
    }
}
