package polewright.session.event;

import java.time.Duration;
import java.util.List;
import java.util.function.UnaryOperator;
import polewright.alignment.sighting.Sighting;
import polewright.mount.rig.RigCorrection;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

/** An earlier event was logged wrongly, or not at all. */
public sealed interface Correction extends NightEvent.Revision {
    /** An earlier event was entered wrongly, and this was meant. */
    sealed interface Replacement extends Correction {
        NightEvent meant();

        /** Refuses to replace an event of another sort. */
        void requireFits(LoggedEvent replaced);
    }

    /** The rig or the site was entered wrongly. */
    sealed interface SetupCorrection extends Correction {
        @Override
        default long seq() {
            return NightEvent.BEGIN_SEQ;
        }

        NightEvent.Begun appliedTo(NightEvent.Begun before);
    }

    /**
     * An earlier turn was entered wrongly.
     *
     * @param seq the number of that turn
     * @param meant the actual turn
     */
    record TurnCorrected(long seq, NightEvent.ScrewsTurned meant) implements Replacement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.turnCorrected(this);
        }

        @Override
        public void requireFits(LoggedEvent replaced) {
            EventBounds.requireTurn(replaced);
        }
    }

    /**
     * Screws were turned by an unknown amount after an earlier event, without being logged.
     *
     * @param seq the number of that event
     * @param azimuth whether the azimuth screw may have been turned
     * @param altitude whether the altitude screw may have been turned
     */
    record TurnNotLogged(long seq, boolean azimuth, boolean altitude) implements Correction, NightEvent.ScrewMove {
        public TurnNotLogged {
            if (!azimuth && !altitude) {
                throw new InputRefused("no screw was turned", "give the azimuth screw, the altitude screw or both");
            }
        }

        @Override
        public <R> R acceptMove(MoveVisitor<R> visitor) {
            return visitor.turnNotLogged(this);
        }
    }

    /**
     * A measurement was entered wrongly.
     *
     * @param seq the number of that measurement
     * @param meant the actual measurement
     */
    record MeasurementCorrected(long seq, NightEvent.Measurement meant) implements Replacement {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.measurementCorrected(this);
        }

        @Override
        public NightEvent withSighting(UnaryOperator<Sighting> change) {
            return new MeasurementCorrected(seq, meant.withSighting(change));
        }

        @Override
        public void requireFits(LoggedEvent replaced) {
            EventBounds.requireMeasurement(replaced);
        }
    }

    /** The rig was entered wrongly; the correction applies from the beginning of the night. */
    record RigCorrected(RigCorrection correction) implements SetupCorrection {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.rigCorrected(this);
        }

        @Override
        public NightEvent.Begun appliedTo(NightEvent.Begun before) {
            return before.with(correction);
        }
    }

    /** The site was entered wrongly; the correction applies from the beginning of the night. */
    record SiteCorrected(Site site) implements SetupCorrection {
        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.siteCorrected(this);
        }

        @Override
        public NightEvent.Begun appliedTo(NightEvent.Begun before) {
            return before.at(site);
        }
    }

    /**
     * The computer's clock was wrong while earlier events were logged.
     *
     * @param seq the number of the first of them
     * @param last the number of the last of them
     * @param shift to be added to their times
     */
    record ClockCorrected(long seq, long last, Duration shift) implements Correction {
        public ClockCorrected {
            EventBounds.requireClockError(seq, last, shift);
        }

        @Override
        public <R> R accept(EventVisitor<R> visitor) {
            return visitor.clockCorrected(this);
        }

        @Override
        public List<Long> refersTo() {
            return List.of(seq, last);
        }
    }
}
