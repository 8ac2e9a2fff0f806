package polewright.sky.atlas;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.DoubleBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32C;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/**
 * About 1.87 million stars over the whole sky, searched by cone and magnitude.
 *
 * <p><b>Contents.</b> Tycho-2 thinned evenly over the sky for plate matching (dense to about VT 11.5, with many to VT
 * 12.5); bright and named stars with proper motion instead of their Tycho-2 entries; Hipparcos stars missing from
 * Tycho-2.
 *
 * <p><b>Positions.</b> ICRS. Epoch J2000.0: the bright stars in full precision with proper motion, the rest within
 * 0.04″ of their source (16 bits per coordinate inside a cell, see {@link SkyCells}) and <em>without</em> motion, so
 * that a star moving 0.05″ a year is off by 1.3″ in 2026. Against 41,411 Hipparcos positions to V 8: 0.15″ RMS, nearly
 * all of it the rounding of the Hipparcos table, with 0.2 % (doubles) off by more than 1″. The Tycho-2 entries whose
 * epoch in the source is 1991.25 are mostly stars brighter than VT 3, which the bright stars replace.
 *
 * <p><b>Magnitudes.</b> Tycho VT in steps of 1/16 for the Tycho-2 stars, about 0.1 fainter than Johnson V for a star of
 * solar colour; Johnson V for bright stars and those added from Hipparcos.
 *
 * <p><b>The file</b> {@code star-atlas.bin}, big-endian:
 *
 * <pre>
 *   8 bytes           "PWSTARS1"
 *   int               n, bright stars
 *   int               m, cells (that of SkyCells)
 *   int               k, other stars
 *   n × 7 doubles     right ascension and declination (degrees, ICRS, J2000.0), proper motion in right ascension
 *                     times cos δ and in declination (mas a year), parallax (mas), radial velocity (km/s), V;
 *                     brightest first
 *   m × ushort        stars in each cell
 *   k × 5 bytes       cell after cell, brightest first in each: ushort step east, ushort step north,
 *                     ubyte magnitude × 16
 * </pre>
 *
 * <p>It is read once into 9.6 MB of arrays; nothing else is stored per star. Instances are immutable and may be shared
 * between threads.
 */
public final class StarAtlas {
    /** The first bytes of an atlas file. */
    public static final String MAGIC = "PWSTARS1";

    /** Bytes per star without proper motion. */
    public static final int BYTES_PER_STAR = 5;

    /** Steps of the stored magnitude per magnitude. */
    public static final int STEPS_PER_MAGNITUDE = 16;

    private static final String RESOURCE = "star-atlas.bin";
    private static final double J2000_JULIAN_YEAR = 2000.0;

    private final CatalogueStar[] bright;
    private final double[] brightMagnitudes;
    private final int[] cellStarts;
    private final byte[] stars;

    private StarAtlas(CatalogueStar[] bright, double[] brightMagnitudes, int[] cellStarts, byte[] stars) {
        this.bright = bright;
        this.brightMagnitudes = brightMagnitudes;
        this.cellStarts = cellStarts;
        this.stars = stars;
    }

    /** The atlas in the jar, loaded on first use. */
    public static StarAtlas bundled() {
        return Bundled.ATLAS;
    }

    private static final class Bundled {
        static final StarAtlas ATLAS = load();

        private static StarAtlas load() {
            try (InputStream in = BundledTable.open(RESOURCE)) {
                return read(in);
            } catch (IOException broken) {
                throw new UncheckedIOException("the bundled star atlas cannot be read", broken);
            }
        }
    }

    /** Reads an atlas in the format above. */
    public static StarAtlas read(InputStream source) throws IOException {
        DataInputStream in = new DataInputStream(source);
        byte[] magic = new byte[MAGIC.length()];
        in.readFully(magic);
        if (!MAGIC.equals(new String(magic, StandardCharsets.US_ASCII))) {
            throw new IOException("not a star atlas: it does not start with " + MAGIC);
        }
        int brightCount = in.readInt();
        int cellCount = in.readInt();
        int starCount = in.readInt();
        if (cellCount != SkyCells.count()) {
            throw new IOException("star atlas of " + cellCount + " cells, expected " + SkyCells.count());
        }
        CatalogueStar[] bright = new CatalogueStar[brightCount];
        double[] brightMagnitudes = new double[brightCount];
        DoubleBuffer figures =
                ByteBuffer.wrap(in.readNBytes(brightCount * 7 * Double.BYTES)).asDoubleBuffer();
        for (int i = 0; i < brightCount; i++) {
            bright[i] = new CatalogueStar(
                    Angle.ofDegrees(figures.get()),
                    Angle.ofDegrees(figures.get()),
                    figures.get(),
                    figures.get(),
                    figures.get(),
                    figures.get());
            brightMagnitudes[i] = figures.get();
        }
        byte[] counts = new byte[cellCount * 2];
        in.readFully(counts);
        int[] cellStarts = new int[cellCount + 1];
        for (int cell = 0; cell < cellCount; cell++) {
            cellStarts[cell + 1] = cellStarts[cell] + unsignedShort(counts, 2 * cell);
        }
        if (cellStarts[cellCount] != starCount) {
            throw new IOException(
                    "star atlas of " + starCount + " stars has " + cellStarts[cellCount] + " in its cells");
        }
        byte[] stars = new byte[starCount * BYTES_PER_STAR];
        in.readFully(stars);
        return new StarAtlas(bright, brightMagnitudes, cellStarts, stars);
    }

    /** The number of stars in the atlas. */
    public int size() {
        return bright.length + stars.length / BYTES_PER_STAR;
    }

    /** The number of stars with a known proper motion. They have the lowest numbers, brightest first. */
    public int sizeWithMotion() {
        return bright.length;
    }

    /**
     * The star with a number from 0 to {@link #size()} − 1, as returned by a search.
     *
     * @throws IndexOutOfBoundsException for any other number
     */
    public AtlasStar star(int number) {
        if (number < bright.length) {
            return new AtlasStar(bright[number], brightMagnitudes[number]);
        }
        int index = number - bright.length;
        int at = index * BYTES_PER_STAR;
        int found = Arrays.binarySearch(cellStarts, index);
        // Empty cells share a start with the next one; the last of them contains the star.
        int cell = found < 0 ? -found - 2 : found;
        while (cellStarts[cell + 1] <= index) {
            cell++;
        }
        int zone = SkyCells.zoneOf(cell);
        return new AtlasStar(
                CatalogueStar.fixed(
                        Angle.ofDegrees(SkyCells.rightAscensionDeg(zone, cell, unsignedShort(stars, at))),
                        Angle.ofDegrees(SkyCells.declinationDeg(zone, unsignedShort(stars, at + 2)))),
                magnitudeAt(at));
    }

    /** The magnitude of the star with a number. */
    public double magnitude(int number) {
        return number < bright.length
                ? brightMagnitudes[number]
                : magnitudeAt((number - bright.length) * BYTES_PER_STAR);
    }

    /**
     * The position of a star with known proper motion at an epoch, ICRS.
     *
     * @param number less than {@link #sizeWithMotion()}
     * @param julianYear as in {@link #starsWithin(Angle, Angle, Angle, double, double)}
     */
    public Vector3D direction(int number, double julianYear) {
        double[] v = new double[3];
        StarMotion.direction(bright[number], julianYear - J2000_JULIAN_YEAR, v);
        return new Vector3D(v[0], v[1], v[2]);
    }

    /** CRC-32C of the stars: data derived from one atlas is invalid for another. */
    public int checksum() {
        CRC32C sum = new CRC32C();
        sum.update(stars);
        for (double magnitude : brightMagnitudes) {
            sum.update(ByteBuffer.allocate(Double.BYTES).putDouble(0, magnitude));
        }
        for (CatalogueStar star : bright) {
            sum.update(ByteBuffer.allocate(2 * Double.BYTES)
                    .putDouble(0, star.rightAscension().radians())
                    .putDouble(Double.BYTES, star.declination().radians()));
        }
        return (int) sum.getValue();
    }

    /** Stars within a radius of an ICRS position, brightest first, at epoch J2000.0. */
    public StarField starsWithin(Angle rightAscension, Angle declination, Angle radius, double faintestMagnitude) {
        return starsWithin(rightAscension, declination, radius, faintestMagnitude, J2000_JULIAN_YEAR);
    }

    /**
     * Stars within a radius of an ICRS position at an epoch, brightest first.
     *
     * @param rightAscension of the centre, any value
     * @param declination of the centre, −90° to 90°
     * @param radius 0° to 180°, the edge counts as inside
     * @param faintestMagnitude magnitude limit, inclusive
     * @param julianYear epoch to which known proper motions are applied, e.g. 2026.4; parallax and radial velocity are
     *     left out
     */
    public StarField starsWithin(
            Angle rightAscension, Angle declination, Angle radius, double faintestMagnitude, double julianYear) {
        FieldCollector found = new FieldCollector();
        visit(rightAscension, declination, radius, faintestMagnitude, julianYear, found);
        return found.brightestFirst(this);
    }

    /**
     * As {@link #starsWithin(Angle, Angle, Angle, double, double)}, but in no particular order and without storing any.
     */
    public void visit(
            Angle rightAscension,
            Angle declination,
            Angle radius,
            double faintestMagnitude,
            double julianYear,
            StarVisitor visitor) {
        Cone cone = Cone.around(rightAscension, declination, radius);
        visitBright(cone, faintestMagnitude, julianYear - J2000_JULIAN_YEAR, visitor);
        for (int zone = cone.firstZone(); zone <= cone.lastZone(); zone++) {
            int cells = SkyCells.cellsIn(zone);
            int firstColumn = cone.firstColumn(cells);
            int columns = cone.columns(cells);
            for (int i = 0; i < columns; i++) {
                int column = Math.floorMod(firstColumn + i, cells);
                visitCell(zone, SkyCells.firstCell(zone) + column, cone, faintestMagnitude, visitor);
            }
        }
    }

    private void visitBright(Cone cone, double faintestMagnitude, double years, StarVisitor visitor) {
        double[] v = new double[3];
        for (int i = 0; i < bright.length && brightMagnitudes[i] <= faintestMagnitude; i++) {
            StarMotion.direction(bright[i], years, v);
            if (cone.holds(v[0], v[1], v[2])) {
                visitor.star(i, v[0], v[1], v[2], brightMagnitudes[i]);
            }
        }
    }

    private void visitCell(int zone, int cell, Cone cone, double faintestMagnitude, StarVisitor visitor) {
        for (int index = cellStarts[cell]; index < cellStarts[cell + 1]; index++) {
            int at = index * BYTES_PER_STAR;
            double magnitude = magnitudeAt(at);
            if (magnitude > faintestMagnitude) {
                return;
            }
            double dec = Math.toRadians(SkyCells.declinationDeg(zone, unsignedShort(stars, at + 2)));
            if (!cone.reaches(dec)) {
                continue;
            }
            double ra = Math.toRadians(SkyCells.rightAscensionDeg(zone, cell, unsignedShort(stars, at)));
            double cosDec = Math.cos(dec);
            double x = cosDec * Math.cos(ra);
            double y = cosDec * Math.sin(ra);
            double z = Math.sin(dec);
            if (cone.holds(x, y, z)) {
                visitor.star(bright.length + index, x, y, z, magnitude);
            }
        }
    }

    private double magnitudeAt(int at) {
        return (stars[at + 4] & 0xff) / (double) STEPS_PER_MAGNITUDE;
    }

    private static int unsignedShort(byte[] bytes, int at) {
        return (bytes[at] & 0xff) << 8 | (bytes[at + 1] & 0xff);
    }
}
