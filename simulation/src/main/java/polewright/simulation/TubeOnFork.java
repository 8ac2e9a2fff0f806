package polewright.simulation;

import polewright.sky.angle.Angle;

/**
 * How tube and camera are mounted on the fork, with their misalignments.
 *
 * @param cone how far the tube points east of the perpendicular to the declination axis
 * @param declinationAxisTilt how far the declination axis, with the tube on the meridian, has its east end toward the
 *     north pole
 * @param cameraRoll position angle of the picture's up about the mount's own north, through east
 * @param sag how far the tube droops when horizontal; decreases with the cosine of its altitude
 */
public record TubeOnFork(Angle cone, Angle declinationAxisTilt, Angle cameraRoll, Angle sag) {
    public static final TubeOnFork SQUARE = new TubeOnFork(Angle.ZERO, Angle.ZERO, Angle.ZERO, Angle.ZERO);

    public TubeOnFork withCameraRoll(Angle other) {
        return new TubeOnFork(cone, declinationAxisTilt, other, sag);
    }

    public TubeOnFork withSag(Angle other) {
        return new TubeOnFork(cone, declinationAxisTilt, cameraRoll, other);
    }
}
