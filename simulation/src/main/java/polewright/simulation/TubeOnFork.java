package polewright.simulation;

import polewright.sky.angle.Angle;

/**
 * How tube and camera sit on the fork, none of it as square as it should be.
 *
 * @param cone how far the tube points east of square to the declination axis
 * @param declinationAxisTilt how far the declination axis, when the tube is on the meridian, has its east end toward the
 *     north pole
 * @param cameraRoll position angle of the picture's up about the mount's own north, through east
 * @param sag how far the tube droops when it is level; less as it is raised, by the cosine of its altitude
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
