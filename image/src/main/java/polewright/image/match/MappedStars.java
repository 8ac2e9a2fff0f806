package polewright.image.match;

import java.nio.IntBuffer;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/** The brightest stars of a region of sky, with a search for those near a direction. */
final class MappedStars {
    private static final int STARS_PER_CELL = 3;

    private final StarAtlas atlas;
    private final int count;
    private final double steradians;
    private final SkyGrid grid;
    // By rank: the star's number in the atlas, and its slot in the grid.
    private final IntBuffer numbers;
    private final IntBuffer slots;

    /**
     * @param stars brightest first; their index is called rank
     * @param count number of stars to map, the brightest
     * @param radiusRad of the circle of sky that they fill, π for the whole
     */
    MappedStars(StarField stars, int count, double radiusRad) {
        this.atlas = stars.atlas();
        this.count = count;
        steradians = 2 * Math.PI * (1 - Math.cos(Math.min(Math.PI, radiusRad)));
        grid = new SkyGrid(
                (rank, axis) -> switch (axis) {
                    case 0 -> stars.x(rank);
                    case 1 -> stars.y(rank);
                    default -> stars.z(rank);
                },
                count,
                cellHeightRad(count, STARS_PER_CELL));
        int[] numberOf = new int[count];
        int[] slotOf = new int[count];
        for (int slot = 0; slot < count; slot++) {
            int rank = grid.member(slot);
            slotOf[rank] = slot;
            numberOf[rank] = stars.number(rank);
        }
        numbers = IntBuffer.wrap(numberOf);
        slots = IntBuffer.wrap(slotOf);
    }

    /**
     * The whole sky from the store.
     *
     * @param numbers in the atlas, by rank
     * @param slots in the grid, by rank
     */
    MappedStars(StarAtlas atlas, SkyGrid grid, IntBuffer numbers, IntBuffer slots) {
        this.atlas = atlas;
        this.count = grid.size();
        this.steradians = 4 * Math.PI;
        this.grid = grid;
        this.numbers = numbers;
        this.slots = slots;
    }

    /** A grid of the brightest stars alone, with this mean number per cell. */
    SkyGrid gridOf(int brightest, double starsPerCell) {
        return new SkyGrid(this::coordinate, brightest, cellHeightRad(brightest, starsPerCell));
    }

    private double cellHeightRad(int brightest, double starsPerCell) {
        return Math.min(Math.PI / 4, cellRad(brightest, starsPerCell));
    }

    /** Width of a cell with this mean number of the brightest stars. */
    double cellRad(int brightest, double starsPerCell) {
        return Math.sqrt(starsPerCell * steradians / Math.max(1, brightest));
    }

    /** Mean density of the brightest over the region. */
    double starsPerSteradian(int brightest) {
        return brightest / steradians;
    }

    int count() {
        return count;
    }

    /** The solid angle that they fill. */
    double steradians() {
        return steradians;
    }

    /** The star's number in the atlas. */
    int number(int rank) {
        return numbers.get(rank);
    }

    /** The star's slot in the grid. */
    int slot(int rank) {
        return slots.get(rank);
    }

    double magnitude(int rank) {
        return atlas.magnitude(number(rank));
    }

    /** One coordinate of its unit vector, ICRS: 0 for x, 1 for y, 2 for z. */
    double coordinate(int rank, int axis) {
        return SkyGrid.STEP * grid.place(slots.get(rank), axis);
    }

    /** ICRS. */
    Vector3D direction(int rank) {
        int slot = slots.get(rank);
        return new Vector3D(
                SkyGrid.STEP * grid.place(slot, 0),
                SkyGrid.STEP * grid.place(slot, 1),
                SkyGrid.STEP * grid.place(slot, 2));
    }

    SkyGrid grid() {
        return grid;
    }
}
