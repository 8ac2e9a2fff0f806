package polewright.mount.rig;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import polewright.mount.AxisOffset;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * The mount and its optics as described by the owner.
 *
 * @param name the user's name for it
 * @param kind the kind of mount
 * @param azimuthScrew moves the axis left and right
 * @param altitudeScrew raises and lowers the axis
 * @param levelSigma how level the base is, 1 sigma: a tilt makes each screw move the axis in the other direction too
 * @param clampSigma shift of the axis on the sky from clamping, 1 sigma in each direction
 * @param optics finders and eyepieces
 * @param cameras cameras on the tube
 * @param screwOrder which screw is turned first
 * @param drive the right-ascension drive
 * @param travel limits of the tube and fork
 * @param experience what has been learned on earlier nights, if anything
 */
public record Rig(
        String name,
        MountKind kind,
        Screw azimuthScrew,
        Screw altitudeScrew,
        Angle levelSigma,
        Angle clampSigma,
        List<Optic> optics,
        List<Camera> cameras,
        ScrewOrder screwOrder,
        RightAscensionDrive drive,
        TravelLimits travel,
        Optional<Experience> experience) {
    // A smaller field contains too few stars of the atlas.
    private static final Angle LEAST_MATCHED_FIELD = Angle.ofDegrees(0.3);

    public Rig {
        if (!azimuthScrew.clockwise().isAzimuth()) {
            throw new InputRefused(
                    "the azimuth screw of rig '" + name + "' "
                            + azimuthScrew.clockwise().name().toLowerCase(Locale.ROOT) + " the axis",
                    "give whether a clockwise turn moves it right or left");
        }
        if (altitudeScrew.clockwise().isAzimuth()) {
            throw new InputRefused(
                    "the altitude screw of rig '" + name + "' moves the axis sideways",
                    "give whether a clockwise turn raises or lowers it");
        }
        requireSmall("base level uncertainty", levelSigma);
        requireSmall("clamping shift", clampSigma);
        optics = List.copyOf(optics);
        cameras = List.copyOf(cameras);
        Set<String> names = new HashSet<>();
        for (Optic optic : optics) {
            if (!names.add(optic.name().toLowerCase(Locale.ROOT))) {
                throw new InputRefused(
                        "rig '" + name + "' has two optics named '" + optic.name() + "'", "give each its own name");
            }
        }
        for (Camera camera : cameras) {
            if (!names.add(camera.name().toLowerCase(Locale.ROOT))) {
                throw new InputRefused(
                        "rig '" + name + "' has two optics or cameras named '" + camera.name() + "'",
                        "give each its own name");
            }
        }
    }

    /** A rig with cameras; altitude screw first, the usual drive, nothing learned yet. */
    public Rig(
            String name,
            MountKind kind,
            Screw azimuthScrew,
            Screw altitudeScrew,
            Angle levelSigma,
            Angle clampSigma,
            List<Optic> optics,
            List<Camera> cameras) {
        this(
                name,
                kind,
                azimuthScrew,
                altitudeScrew,
                levelSigma,
                clampSigma,
                optics,
                cameras,
                ScrewOrder.ALTITUDE_FIRST,
                RightAscensionDrive.USUAL,
                TravelLimits.USUAL,
                Optional.empty());
    }

    /** The same without a camera. */
    public Rig(
            String name,
            MountKind kind,
            Screw azimuthScrew,
            Screw altitudeScrew,
            Angle levelSigma,
            Angle clampSigma,
            List<Optic> optics) {
        this(name, kind, azimuthScrew, altitudeScrew, levelSigma, clampSigma, optics, List.of());
    }

    /** The same rig with other cameras. */
    public Rig withCameras(List<Camera> others) {
        return new Rig(
                name,
                kind,
                azimuthScrew,
                altitudeScrew,
                levelSigma,
                clampSigma,
                optics,
                others,
                screwOrder,
                drive,
                travel,
                experience);
    }

    /** The same rig with other finders and eyepieces. */
    public Rig withOptics(List<Optic> others) {
        return new Rig(
                name,
                kind,
                azimuthScrew,
                altitudeScrew,
                levelSigma,
                clampSigma,
                others,
                cameras,
                screwOrder,
                drive,
                travel,
                experience);
    }

    /** The same rig with other screws, and a base level to within {@code level}. */
    public Rig withScrews(Screw azimuth, Screw altitude, Angle level) {
        return new Rig(
                name,
                kind,
                azimuth,
                altitude,
                level,
                clampSigma,
                optics,
                cameras,
                screwOrder,
                drive,
                travel,
                experience);
    }

    /** The same rig with other travel limits. */
    public Rig withTravel(TravelLimits limits) {
        return new Rig(
                name,
                kind,
                azimuthScrew,
                altitudeScrew,
                levelSigma,
                clampSigma,
                optics,
                cameras,
                screwOrder,
                drive,
                limits,
                experience);
    }

    /** The same rig with what has been learned on earlier nights. */
    public Rig withExperience(Optional<Experience> learned) {
        return new Rig(
                name,
                kind,
                azimuthScrew,
                altitudeScrew,
                levelSigma,
                clampSigma,
                optics,
                cameras,
                screwOrder,
                drive,
                travel,
                learned);
    }

    /** Usual shift of the axis on the sky when the clamps are tightened; zero until earlier nights have shown it. */
    public AxisOffset usualClampShift() {
        return experience.map(Experience::clampShift).orElse(AxisOffset.NONE);
    }

    /** 1 sigma about that in each direction, for the next clamping. */
    public Angle clampingSigma() {
        return experience.map(Experience::clampSigma).orElse(clampSigma);
    }

    /**
     * A common fork on a wedge: screws known to 20 %, a 6° finder with an inverted image, a 1° eyepiece with a
     * diagonal.
     */
    public static Rig typicalForkOnWedge() {
        return new Rig(
                "fork",
                MountKind.FORK_ON_WEDGE,
                Screw.rough(new ScrewGeometry.PushScrew(1.25, 200), ScrewSense.RIGHT)
                        .withSenseAssumed(),
                Screw.rough(new ScrewGeometry.PushScrew(1.25, 180), ScrewSense.RAISES)
                        .withSenseAssumed(),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(2),
                List.of(
                        new Optic("finder", Angle.ofDegrees(6), View.of(Orientation.INVERTED), Optional.empty()),
                        new Optic("eyepiece", Angle.ofDegrees(0.8), View.of(Orientation.MIRRORED), Optional.empty()),
                        new Optic(
                                "reticle",
                                Angle.ofDegrees(0.4),
                                View.of(Orientation.MIRRORED),
                                Optional.of(Angle.ofArcseconds(15)))));
    }

    /** The optic with the widest field, to find the centre of rotation. */
    public Optional<Optic> widestOptic() {
        return optics.stream().max(Comparator.comparing(Optic::field));
    }

    /** The optic for a drift: the finest reticle, or else the narrowest field. */
    public Optional<Optic> finestOptic() {
        return optics.stream()
                .filter(o -> o.division().isPresent())
                .min(Comparator.comparing(o -> o.division().orElseThrow()))
                .or(() -> optics.stream().min(Comparator.comparing(Optic::field)));
    }

    /** The camera whose frames give the most accurate axis, among those with a field large enough to solve. */
    public Optional<Camera> bestCamera() {
        return cameras.stream()
                .filter(c -> c.field().compareTo(LEAST_MATCHED_FIELD) >= 0)
                .min(Comparator.comparing(c -> c.usualCovariance().rollSigma()));
    }

    public Optional<Optic> optic(String opticName) {
        return optics.stream().filter(o -> o.name().equalsIgnoreCase(opticName)).findFirst();
    }

    private static void requireSmall(String what, Angle angle) {
        if (!(angle.radians() >= 0 && angle.degrees() <= 20)) {
            throw new InputRefused(
                    what + " of " + Math.rint(angle.degrees() * 1e6) / 1e6 + " degrees is outside 0 to 20",
                    "correct the rig file");
        }
    }
}
