package polewright.bench.frames.disturbed;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import polewright.bench.frames.Draw;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/**
 * One set of frames with its true values.
 *
 * <p>A fork whose declination axis is 5′ (1 sigma) from perpendicular carries a camera that is misaligned on the tube
 * by half a degree, with a random roll. Right ascension is turned by 20° to 40° from frame to frame, eastward or
 * westward. Each frame is placed with an error drawn from the covariance that it states; in addition, fork and tube
 * flex by 2″ at each frame and droop by up to 15″ times the cosine of the altitude, not included in the stated
 * errors.
 *
 * @param frames as they would be placed
 * @param frame counted from 1 by the times that the frames state: the fault happened before it, or in it
 * @param eastArcmin where the axis points after the last frame: the component of its elevated end along the east
 * @param upArcmin the component along the direction perpendicular to pole and east, upward
 * @param traceless whether no frame shows anything of it
 */
record DisturbedSet(
        Site site, List<CameraAttitude> frames, int frame, double eastArcmin, double upArcmin, boolean traceless) {
    private static final double ARCSEC = Math.PI / (180 * 3600);
    private static final double ARCMIN = Math.PI / (180 * 60);
    private static final double DEGREE = Math.PI / 180;
    private static final double SKY_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");

    static DisturbedSet drawn(WhatWentWrong wrong, int count, long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        double latitudeDeg = (random.nextBoolean() ? 1 : -1) * Draw.between(20, 60, random);
        double sign = Math.signum(latitudeDeg);
        double latitude = latitudeDeg * DEGREE;
        double[] pole = {0, sign * Math.cos(latitude), sign * Math.sin(latitude)};
        double[] up = {0, -Math.sin(latitude), Math.cos(latitude)};
        double east = 60 * ARCMIN * random.nextGaussian();
        double high = 60 * ARCMIN * random.nextGaussian();
        double along = Math.sqrt(1 - east * east - high * high);
        double[] axis = sum(along, pole, east, new double[] {1, 0, 0}, high, up);

        // Mount axes: the elevated end, and two perpendicular to it.
        double[] first = Turned.unit(Turned.cross(axis, new double[] {0, 0, 1}));
        double[] second = Turned.cross(axis, first);
        double[] declinationAxis = Turned.unit(sum(1, first, 5 * ARCMIN * random.nextGaussian(), axis, 0, second));
        double polarDistance = Draw.between(5, 110, random) * DEGREE;
        double[][] askew = Turned.by(gaussian(0.5 * DEGREE, random));
        double[][] camera = cameraOnTube(axis, second, declinationAxis, polarDistance, random);

        int frame = wrong.betweenFrames ? 2 + random.nextInt(count - 1) : 1 + random.nextInt(count);
        if (wrong == WhatWentWrong.TRIPOD_BUMPED) {
            frame = 3;
        }
        double[][] bump = Turned.by(direction(bumpOf(wrong, random), random));
        double declinationMoved =
                wrong == WhatWentWrong.DECLINATION_MOVED ? (random.nextBoolean() ? 1 : -1) * DEGREE : 0;
        double[][] slip = wrong == WhatWentWrong.CAMERA_SLIPPED
                ? Turned.by(direction(Draw.logBetween(2, 30, random) * ARCMIN, random))
                : identity();
        double[] astray = wrong == WhatWentWrong.FRAME_ASTRAY
                ? direction(Draw.logBetween(1, 20, random) * ARCMIN, random)
                : new double[3];
        double wrongSeconds = wrong == WhatWentWrong.HEADER_TIME_WRONG
                ? (random.nextBoolean() ? 60 : -60) * Draw.logBetween(1, 60, random)
                : 0;
        // Of the doubled image mostly the brighter half is placed: before the bump or after it. Some are a mixture.
        boolean mixed = random.nextDouble() < 0.3;
        double shown = mixed ? Draw.between(0.2, 0.8, random) : random.nextBoolean() ? 1 : 0;
        boolean staysBumped = random.nextDouble() < 0.7;

        double centreSigma = Draw.logBetween(0.2, 3, random);
        double rollSigma = Draw.logBetween(5, 90, random);
        double droop = Draw.between(0, 15, random) * ARCSEC;
        double turn = (random.nextBoolean() ? 1 : -1) * Draw.between(20, 40, random) * DEGREE;
        boolean tracking = random.nextBoolean();
        double seconds = 0;
        double turned = Draw.between(-80, 20, random) * DEGREE;
        List<CameraAttitude> frames = new ArrayList<>();
        double[][] base = identity();
        for (int i = 1; i <= count; i++) {
            if (i > 1) {
                double gap = Draw.between(30, 180, random);
                seconds += gap;
                turned += turn + (tracking ? gap * SKY_RAD_PER_SECOND : 0);
            }
            base = base(wrong, i, frame, bump, shown, staysBumped);
            double[][] tube = Turned.after(
                    Turned.after(
                            Turned.about(declinationAxis, i >= frame ? declinationMoved : 0),
                            Turned.after(camera, askew)),
                    i >= frame ? slip : identity());
            double[][] truly = Turned.after(base, Turned.after(Turned.about(axis, -sign * turned), tube));
            if (mixed && wrong.isInAnExposure() && i == frame) {
                truly = Turned.after(truly, Turned.by(gaussian(20 * ARCSEC, random)));
            }
            if (wrong == WhatWentWrong.FRAME_ASTRAY && i == frame) {
                truly = Turned.after(truly, Turned.by(astray));
            }
            double[][] given = Turned.after(truly, drooping(truly, droop));
            given = Turned.after(given, Turned.by(new double[] {
                2 * ARCSEC * random.nextGaussian(), 2 * ARCSEC * random.nextGaussian(), 0
            }));
            double[][] placed = Turned.after(given, Turned.by(new double[] {
                centreSigma * ARCSEC * random.nextGaussian(),
                centreSigma * ARCSEC * random.nextGaussian(),
                rollSigma * ARCSEC * random.nextGaussian()
            }));
            double clock = seconds;
            if (wrong == WhatWentWrong.HEADER_TIME_WRONG && i == frame) {
                // The same stars at a later time have moved westward about the pole: clockwise seen from the north.
                placed = Turned.after(Turned.about(pole, -sign * wrongSeconds * SKY_RAD_PER_SECOND), placed);
                clock += wrongSeconds;
            }
            frames.add(attitude(placed, clock, centreSigma, rollSigma));
        }
        double[] now = Turned.applied(base, axis);
        boolean isShownAsBefore = shown == 0 && (frame == count || !staysBumped);
        boolean isShownAsAfter = shown == 1 && frame == 1 && staysBumped;
        boolean traceless = wrong.isInAnExposure() && (isShownAsBefore || isShownAsAfter);
        Instant stated = frames.get(frame - 1).at();
        int placeByTime =
                1 + (int) frames.stream().filter(f -> f.at().isBefore(stated)).count();
        return new DisturbedSet(
                Site.ofDegrees(latitudeDeg, 0, 200),
                List.copyOf(frames),
                placeByTime,
                now[0] / ARCMIN,
                Turned.dot(now, up) / ARCMIN,
                traceless);
    }

    private static double bumpOf(WhatWentWrong wrong, RandomGenerator random) {
        return switch (wrong) {
            case TRIPOD_BUMPED -> 15 * ARCMIN;
            case TRIPOD_BUMPED_ANYWHERE -> Draw.logBetween(1, 30, random) * ARCMIN;
            case BUMPED_WHILE_EXPOSED -> Draw.logBetween(5, 15, random) * ARCMIN;
            case BUMPED_A_LITTLE_WHILE_EXPOSED -> Draw.logBetween(1, 5, random) * ARCMIN;
            default -> 0;
        };
    }

    /**
     * The displacement of the base at a frame; for the frame exposed during the bump, as far as its picture shows it.
     */
    private static double[][] base(
            WhatWentWrong wrong, int i, int frame, double[][] bump, double shown, boolean staysBumped) {
        if (!wrong.isInAnExposure()) {
            return i >= frame ? bump : identity();
        }
        if (i == frame) {
            return Turned.by(Turned.scaled(shown, vectorOf(bump)));
        }
        return i > frame && staysBumped ? bump : identity();
    }

    /** The camera on the tube with the mount unturned: its columns are the camera's axes in ENU. */
    private static double[][] cameraOnTube(
            double[] axis, double[] second, double[] declinationAxis, double polarDistance, RandomGenerator random) {
        double[] boresight = Turned.applied(Turned.about(declinationAxis, polarDistance), axis);
        double[] right = Turned.unit(Turned.cross(boresight, declinationAxis));
        double[] down = Turned.cross(boresight, right);
        double[][] columns = {
            {right[0], down[0], boresight[0]}, {right[1], down[1], boresight[1]}, {right[2], down[2], boresight[2]}
        };
        double[][] turned =
                Turned.after(columns, Turned.about(new double[] {0, 0, 1}, 2 * Math.PI * random.nextDouble()));
        // Unturned, the tube is somewhere about the axis; the meridian is in the direction of the second axis.
        return Turned.dot(second, boresight) >= 0 ? turned : Turned.after(Turned.about(axis, Math.PI), turned);
    }

    /** In camera axes: the boresight sinks. */
    private static double[][] drooping(double[][] camera, double arcsecRad) {
        double[] down = Turned.inverse(camera, new double[] {0, 0, -1});
        return Turned.by(Turned.scaled(arcsecRad, Turned.cross(new double[] {0, 0, 1}, down)));
    }

    private static CameraAttitude attitude(double[][] turn, double seconds, double centre, double roll) {
        double[] q = Turned.quaternion(turn);
        return new CameraAttitude(
                EVENING.plusMillis(Math.round(1000 * seconds)),
                q[0],
                q[1],
                q[2],
                q[3],
                new RotationCovariance(centre * centre, 0, 0, centre * centre, 0, roll * roll));
    }

    private static double[] gaussian(double sigma, RandomGenerator random) {
        return new double[] {sigma * random.nextGaussian(), sigma * random.nextGaussian(), sigma * random.nextGaussian()
        };
    }

    private static double[] direction(double length, RandomGenerator random) {
        return Turned.scaled(length, Turned.unit(gaussian(1, random)));
    }

    private static double[] vectorOf(double[][] small) {
        double[] q = Turned.quaternion(small);
        double sine = Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2]);
        double angle = 2 * Math.atan2(sine, q[3]);
        return sine == 0 ? new double[3] : Turned.scaled(angle / sine, new double[] {q[0], q[1], q[2]});
    }

    private static double[][] identity() {
        return new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    }

    private static double[] sum(double a, double[] x, double b, double[] y, double c, double[] z) {
        return new double[] {
            a * x[0] + b * y[0] + c * z[0], a * x[1] + b * y[1] + c * z[1], a * x[2] + b * y[2] + c * z[2]
        };
    }
}
