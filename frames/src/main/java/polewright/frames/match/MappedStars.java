package polewright.frames.match;

import java.util.stream.IntStream;
import polewright.sky.atlas.StarField;

/** The brightest stars of a piece of sky, to be asked which of them are near a direction. */
final class MappedStars {
    private static final int STARS_PER_CELL = 3;

    private final StarField stars;
    private final int count;
    private final float[] raRad;
    private final float[] decRad;
    private final double steradians;
    private final SkyGrid grid;

    /**
     * @param stars brightest first; their number is called rank
     * @param count how many of them to map, the brightest
     * @param radiusRad of the circle of sky that they fill, π for the whole
     */
    MappedStars(StarField stars, int count, double radiusRad) {
        this.stars = stars;
        this.count = count;
        raRad = new float[count];
        decRad = new float[count];
        IntStream.range(0, count).parallel().forEach(rank -> {
            double ra = Math.atan2(stars.y(rank), stars.x(rank));
            raRad[rank] = (float) (ra < 0 ? ra + 2 * Math.PI : ra);
            decRad[rank] = (float) Math.asin(Math.max(-1, Math.min(1, stars.z(rank))));
        });
        steradians = 2 * Math.PI * (1 - Math.cos(Math.min(Math.PI, radiusRad)));
        grid = gridOf(count, STARS_PER_CELL);
    }

    /** A grid of the brightest stars alone, with so many in a cell on average. */
    SkyGrid gridOf(int brightest, double starsPerCell) {
        double height = cellRad(brightest, starsPerCell);
        return new SkyGrid(stars, raRad, decRad, brightest, Math.min(Math.PI / 4, height));
    }

    /** Width of a cell that holds so many of the brightest stars on average. */
    double cellRad(int brightest, double starsPerCell) {
        return Math.sqrt(starsPerCell * steradians / Math.max(1, brightest));
    }

    /** Density of the brightest, averaged over the piece of sky. */
    double starsPerSteradian(int brightest) {
        return brightest / steradians;
    }

    StarField stars() {
        return stars;
    }

    int count() {
        return count;
    }

    double raRad(int rank) {
        return raRad[rank];
    }

    double decRad(int rank) {
        return decRad[rank];
    }

    SkyGrid grid() {
        return grid;
    }
}
