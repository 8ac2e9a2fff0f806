package polewright.mount.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** What was wrong with a rig as it was entered. */
public sealed interface RigCorrection {
    /**
     * The rig as it is.
     *
     * @throws InputRefused when no rig has these figures together
     */
    Rig appliedTo(Rig entered);

    /** It is another rig altogether. */
    record AnotherRig(Rig rig) implements RigCorrection {
        @Override
        public Rig appliedTo(Rig entered) {
            return rig;
        }
    }

    /**
     * Some figures were wrong; each that is absent stays as it is. Earlier nights were worked out with the wrong figure, so
     * what they taught about it no longer holds; what they taught about the rest does.
     *
     * @param azimuthScrew of the azimuth screw
     * @param altitudeScrew of the altitude screw
     * @param levelSigma how level the base is, 1 sigma
     * @param clampSigma how far clamping shifts the axis, 1 sigma in each direction
     * @param optics all finders and eyepieces
     * @param cameras all cameras
     * @param screwOrder which screw is turned first
     * @param drive what turns the right-ascension axis
     * @param travel how far tube and fork may swing
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

        /** Only the screws' figures. */
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
                    .map(learned -> taughtOtherwise(entered.azimuthScrew(), azimuth)
                            ? learned.withoutAzimuth(azimuth.relativeGainSigma())
                            : learned)
                    .map(learned -> taughtOtherwise(entered.altitudeScrew(), altitude)
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

        /** Hand, play and finish change nothing of how far a turn goes. */
        private static boolean taughtOtherwise(Screw entered, Screw corrected) {
            return !entered.geometry().equals(corrected.geometry())
                    || entered.clockwise() != corrected.clockwise()
                    || entered.relativeGainSigma() != corrected.relativeGainSigma();
        }
    }
}
