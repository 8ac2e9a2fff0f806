package polewright.image.match;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.util.Optional;
import java.util.zip.CRC32C;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/**
 * The patterns of the whole sky as bytes that can be kept from one start to the next: to work them out takes some
 * seconds, to map them from a file some hundredths of one.
 *
 * <p><b>Bytes</b>, little-endian integers of 32 bits, n the stars, p the patterns:
 *
 * <pre>
 *   magic, format, checksum of the atlas
 *   checksum of all that follows (CRC-32C)
 *   n, p, zones of the grid, cells of codes along each dimension, stars with known motion
 *   n                 number in the atlas, by rank
 *   n                 slot in the grid, by rank
 *   n                 rank, by slot
 *   3n                place at epoch {@value #EPOCH}, by slot (see {@link SkyGrid})
 *   cells + 1         first slot of each cell of the grid
 *   stars with motion rank, by number in the atlas
 *   side⁴ + 1         first pattern of each cell of codes
 *   6p                patterns (see {@link PatternIndex})
 * </pre>
 *
 * <p>They depend on the atlas alone. Which stars make a pattern, its code and the cells are those of the epoch; places
 * are carried to any other, see {@link #at}. Immutable; may be shared between threads.
 */
public final class StoredPatterns {
    /** Incremented whenever bytes written by one version would be misread by another. */
    static final int FORMAT = 1;

    static final int EPOCH = 2030;

    // The fastest of the bright stars move by 0.02° in this time; few patterns contain one.
    private static final double SERVED_YEARS = 15;
    private static final int MAGIC = 0x5057_5054;
    private static final int CHECKED_FROM = 4 * Integer.BYTES;
    private static final int HEADER_INTS = 9;
    private static final double FAINTEST_MAGNITUDE = 16;

    private final StarAtlas atlas;
    private final ByteBuffer bytes;

    private StoredPatterns(StarAtlas atlas, ByteBuffer bytes) {
        this.atlas = atlas;
        this.bytes = bytes;
    }

    /** Computes them: about three seconds on two processors. */
    public static StoredPatterns computed(StarAtlas atlas) {
        StarField field = atlas.starsWithin(Angle.ZERO, Angle.QUARTER_TURN, Angle.HALF_TURN, FAINTEST_MAGNITUDE, EPOCH);
        MappedStars sky = new MappedStars(field, field.size(), Math.PI);
        PatternIndex index = new PatternIndex(sky);
        SkyGrid grid = sky.grid();
        int stars = sky.count();
        int gridCells = SkyGrid.cells(grid.zones());
        int codeCells = PatternIndex.cells(index.side());
        int ints = HEADER_INTS
                + stars * (3 + SkyGrid.AXES)
                + gridCells
                + 1
                + atlas.sizeWithMotion()
                + codeCells
                + 1
                + index.patternCount() * PatternIndex.INTS;
        // Off-heap, like a mapped file: the JIT then sees one buffer class.
        ByteBuffer bytes = ByteBuffer.allocateDirect(Integer.BYTES * ints).order(ByteOrder.LITTLE_ENDIAN);
        IntBuffer into = bytes.asIntBuffer();
        into.put(MAGIC).put(FORMAT).put(atlas.checksum()).put(0);
        into.put(stars)
                .put(index.patternCount())
                .put(grid.zones())
                .put(index.side())
                .put(atlas.sizeWithMotion());
        int[] ranksWithMotion = new int[atlas.sizeWithMotion()];
        for (int rank = 0; rank < stars; rank++) {
            into.put(sky.number(rank));
            if (sky.number(rank) < ranksWithMotion.length) {
                ranksWithMotion[sky.number(rank)] = rank;
            }
        }
        for (int rank = 0; rank < stars; rank++) {
            into.put(sky.slot(rank));
        }
        for (int slot = 0; slot < stars; slot++) {
            into.put(grid.member(slot));
        }
        for (int slot = 0; slot < stars; slot++) {
            for (int axis = 0; axis < SkyGrid.AXES; axis++) {
                into.put(grid.place(slot, axis));
            }
        }
        for (int cell = 0; cell <= gridCells; cell++) {
            into.put(grid.cellStart(cell));
        }
        into.put(ranksWithMotion);
        into.put(index.cellStarts());
        into.put(index.patterns());
        bytes.putInt(CHECKED_FROM - Integer.BYTES, checksum(bytes));
        return new StoredPatterns(atlas, bytes.asReadOnlyBuffer().order(ByteOrder.LITTLE_ENDIAN));
    }

    /**
     * From the store.
     *
     * @return empty if the bytes are of another version or another atlas, truncated or damaged
     */
    public static Optional<StoredPatterns> of(ByteBuffer kept, StarAtlas atlas) {
        ByteBuffer bytes = kept.asReadOnlyBuffer().order(ByteOrder.LITTLE_ENDIAN);
        if (bytes.limit() < HEADER_INTS * Integer.BYTES) {
            return Optional.empty();
        }
        IntBuffer head = bytes.asIntBuffer();
        boolean sound = head.get(0) == MAGIC
                && head.get(1) == FORMAT
                && head.get(2) == atlas.checksum()
                && head.get(3) == checksum(bytes);
        return sound ? Optional.of(new StoredPatterns(atlas, bytes)) : Optional.empty();
    }

    private static int checksum(ByteBuffer bytes) {
        CRC32C sum = new CRC32C();
        ByteBuffer checked = bytes.duplicate();
        checked.position(CHECKED_FROM);
        sum.update(checked);
        return (int) sum.getValue();
    }

    /** The bytes to store; a separate view, positioned at its beginning. */
    public ByteBuffer bytes() {
        return bytes.duplicate();
    }

    /** Whether they are useful in a year: the further from the epoch, the more patterns have changed. */
    static boolean serve(double julianYear) {
        return Math.abs(julianYear - EPOCH) <= SERVED_YEARS;
    }

    /** With every star at its position at an epoch. */
    PatternIndex at(double julianYear) {
        Sections sections = new Sections(bytes.asIntBuffer(), HEADER_INTS);
        int stars = bytes.getInt(4 * Integer.BYTES);
        int patternCount = bytes.getInt(5 * Integer.BYTES);
        int zones = bytes.getInt(6 * Integer.BYTES);
        int side = bytes.getInt(7 * Integer.BYTES);
        IntBuffer numbers = sections.next(stars);
        IntBuffer slots = sections.next(stars);
        int[] members = sections.nextCopied(stars);
        int[] places = sections.nextCopied(SkyGrid.AXES * stars);
        int[] cellStarts = sections.nextCopied(SkyGrid.cells(zones) + 1);
        IntBuffer ranksWithMotion = sections.next(bytes.getInt(8 * Integer.BYTES));
        for (int number = 0; number < ranksWithMotion.limit(); number++) {
            Vector3D direction = atlas.direction(number, julianYear);
            int at = SkyGrid.AXES * slots.get(ranksWithMotion.get(number));
            places[at] = SkyGrid.steps(direction.getX());
            places[at + 1] = SkyGrid.steps(direction.getY());
            places[at + 2] = SkyGrid.steps(direction.getZ());
        }
        MappedStars sky = new MappedStars(atlas, new SkyGrid(zones, cellStarts, members, places), numbers, slots);
        IntBuffer codeStarts = sections.next(PatternIndex.cells(side) + 1);
        return new PatternIndex(sky, side, codeStarts, sections.next(PatternIndex.INTS * patternCount));
    }

    /** One part after another. */
    private static final class Sections {
        private final IntBuffer all;

        Sections(IntBuffer all, int from) {
            this.all = all.position(from);
        }

        IntBuffer next(int ints) {
            IntBuffer section = all.slice(all.position(), ints);
            all.position(all.position() + ints);
            return section;
        }

        int[] nextCopied(int ints) {
            int[] copy = new int[ints];
            all.get(copy);
            return copy;
        }
    }
}
