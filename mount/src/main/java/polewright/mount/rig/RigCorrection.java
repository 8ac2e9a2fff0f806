package polewright.mount.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** A correction to a rig as it was entered. */
public sealed interface RigCorrection {
    /**
     * The corrected rig.
     *
     * @throws InputRefused if no rig can have this combination of values
     */
    Rig appliedTo(Rig entered);

    /** A different rig altogether. */
    record AnotherRig(Rig rig) implements RigCorrection {
        @Override
        public Rig appliedTo(Rig entered) {
            return rig;
        }
    }

    /**
     * Some values were wrong; those absent are unchanged. Earlier nights were evaluated with the wrong value, so what
     * was learned about it no longer holds; the rest still does.
     *
     * @param azimuthScrew of the azimuth screw
     * @param altitudeScrew of the altitude screw
     * @param levelSigma how level the base is, 1 sigma
     * @param clampSigma shift of the axis from clamping, 1 sigma in each direction
     * @param optics all finders and eyepieces
     * @param cameras all cameras
     * @param screwOrder which screw is turned first
     * @param drive the right-ascension drive
     * @param travel limits of the tube and fork
     */
    record Figures(
            ScrewCorrection azimuthScrew,
            ScrewCorrection altitudeScrew,
            Optional<Angle> levelSigma,
            Optional<Angle> clampSigma,
            Optional<List<Optic>> optics,
            Optional<List<Camera>> cameras,
            Optional<ScrewOrder> screwOrder,
            Optional<RightAscensionDrive> drive,
            Optional<TravelLimits> travel)
            implements RigCorrection {
        public Figures {
            optics = optics.map(List::copyOf);
            cameras = cameras.map(List::copyOf);
            if (azimuthScrew.isNone()
                    && altitudeScrew.isNone()
                    && Stream.of(levelSigma, clampSigma, optics, cameras, screwOrder, drive, travel)
                            .allMatch(Optional::isEmpty)) {
                throw new InputRefused("no figure of the rig is corrected", "give the figure that was wrong");
            }
        }

        /** Corrections to the screws only. */
        public static Figures ofScrews(ScrewCorrection azimuth, ScrewCorrection altitude) {
            return new Figures(
                    azimuth,
                    altitude,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
        }

        @Override
        public Rig appliedTo(Rig entered) {
            Screw azimuth = azimuthScrew.appliedTo(entered.azimuthScrew());
            Screw altitude = altitudeScrew.appliedTo(entered.altitudeScrew());
            Angle clamp = clampSigma.orElse(entered.clampSigma());
            Optional<Experience> stillValid = entered.experience()
                    .map(learned -> invalidatesExperience(entered.azimuthScrew(), azimuth)
                            ? learned.withoutAzimuth(azimuth.relativeGainSigma())
                            : learned)
                    .map(learned -> invalidatesExperience(entered.altitudeScrew(), altitude)
                            ? learned.withoutAltitude(altitude.relativeGainSigma())
                            : learned)
                    .map(learned -> clamp.equals(entered.clampSigma()) ? learned : learned.withoutClampings(clamp));
            return new Rig(
                    entered.name(),
                    entered.kind(),
                    azimuth,
                    altitude,
                    levelSigma.orElse(entered.levelSigma()),
                    clamp,
                    optics.orElse(entered.optics()),
                    cameras.orElse(entered.cameras()),
                    screwOrder.orElse(entered.screwOrder()),
                    drive.orElse(entered.drive()),
                    travel.orElse(entered.travel()),
                    stillValid);
        }

        /** Hand, backlash and finish do not affect a screw's gain. */
        private static boolean invalidatesExperience(Screw entered, Screw corrected) {
            return !entered.geometry().equals(corrected.geometry())
                    || entered.clockwise() != corrected.clockwise()
                    || entered.relativeGainSigma() != corrected.relativeGainSigma();
        }
    }
}
