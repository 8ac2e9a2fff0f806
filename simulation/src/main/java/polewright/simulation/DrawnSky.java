package polewright.simulation;

import polewright.image.match.FrameMatcher;
import polewright.simulation.camera.FrameRenderer;
import polewright.sky.atlas.StarAtlas;

/**
 * The sky from which frames are rendered and to which they are matched. Share it between nights, because the matcher
 * caches its patterns.
 *
 * @param atlas with the stars that are rendered and matched
 * @param renderer may render fainter stars as well
 * @param matcher of the atlas
 */
public record DrawnSky(StarAtlas atlas, FrameRenderer renderer, FrameMatcher matcher) {
    /** Renders only the stars of the atlas. */
    public static DrawnSky of(StarAtlas atlas) {
        return new DrawnSky(atlas, new FrameRenderer(atlas), new FrameMatcher(atlas));
    }

    /** The same sky with invented stars below the atlas limit, down to this magnitude. */
    public DrawnSky withInventedStarsTo(double magnitude) {
        return new DrawnSky(atlas, renderer.withInventedStarsTo(magnitude), matcher);
    }
}
