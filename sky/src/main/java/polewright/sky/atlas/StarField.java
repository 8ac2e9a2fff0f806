package polewright.sky.atlas;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * The stars of a region of sky, brightest first, as arrays of numbers, so that matching a frame needs no object per
 * star.
 *
 * <p>Directions are unit vectors in the ICRS (x toward 0h on the equator, z toward the north pole), at the epoch of the
 * search.
 */
public final class StarField {
    private final StarAtlas atlas;
    private final int[] numbers;
    private final double[] vectors;
    private final float[] magnitudes;

    StarField(StarAtlas atlas, int[] numbers, double[] vectors, float[] magnitudes) {
        this.atlas = atlas;
        this.numbers = numbers;
        this.vectors = vectors;
        this.magnitudes = magnitudes;
    }

    /** The atlas that the stars are from. */
    public StarAtlas atlas() {
        return atlas;
    }

    public int size() {
        return numbers.length;
    }

    public double x(int index) {
        return vectors[3 * index];
    }

    public double y(int index) {
        return vectors[3 * index + 1];
    }

    public double z(int index) {
        return vectors[3 * index + 2];
    }

    public double magnitude(int index) {
        return magnitudes[index];
    }

    public Vector3D direction(int index) {
        return new Vector3D(x(index), y(index), z(index));
    }

    public Angle rightAscension(int index) {
        return new Angle(Math.atan2(y(index), x(index))).wrappedPositive();
    }

    public Angle declination(int index) {
        return new Angle(Math.atan2(z(index), Math.hypot(x(index), y(index))));
    }

    /** The star's number in its atlas: a star has the same number in every field from one atlas. */
    public int number(int index) {
        return numbers[index];
    }

    /** The star's catalogue entry, with its proper motion if known. */
    public AtlasStar star(int index) {
        return atlas.star(numbers[index]);
    }
}
