package polewright.simulation;

import polewright.image.match.FrameMatcher;
import polewright.simulation.camera.FrameRenderer;
import polewright.sky.atlas.StarAtlas;

/**
 * The sky that frames are drawn of, and then matched to; to be shared by many nights, for the matcher remembers its
 * patterns.
 *
 * @param atlas of which stars are drawn, and which the matcher knows
 * @param renderer may draw fainter ones besides
 * @param matcher of the atlas
 */
public record DrawnSky(StarAtlas atlas, FrameRenderer renderer, FrameMatcher matcher) {
    /** The stars of the atlas and no other. */
    public static DrawnSky of(StarAtlas atlas) {
        return new DrawnSky(atlas, new FrameRenderer(atlas), new FrameMatcher(atlas));
    }

    /** With invented stars where the atlas ends, as faint as this. */
    public DrawnSky withInventedStarsTo(double magnitude) {
        return new DrawnSky(atlas, renderer.withInventedStarsTo(magnitude), matcher);
    }
}
