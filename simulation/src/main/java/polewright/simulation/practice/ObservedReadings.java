package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.SightingFormat;
import polewright.drawing.chart.RockedField;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;

/** What an action showed, in the figures that an observer would read off and type. */
public sealed interface ObservedReadings {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** The sighting that a reading of this kind is logged as; empty if there is nothing to type. */
    Optional<SightingFormat> loggedAs();

    /** An action that shows nothing. */
    record Nothing() implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.nothing(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.empty();
        }
    }

    /**
     * A compass reading.
     *
     * @param bearingDeg from magnetic north, clockwise, to a whole degree
     */
    record OnCompass(double bearingDeg) implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.onCompass(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.of(SightingFormat.COMPASS);
        }
    }

    /**
     * A reading of the wedge's scale.
     *
     * @param altitudeDeg to a quarter of a degree
     */
    record OnScale(double altitudeDeg) implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.onScale(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.of(SightingFormat.SCALE);
        }
    }

    /**
     * The view in an optic while the tube was swung.
     *
     * @param field what was seen; the centre of rotation has to be judged from the arcs
     * @param star the position of a known star, if there was one in the field
     */
    record WhileRocking(Optic optic, RockedField field, Optional<StarPlace> star) implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.whileRocking(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.of(SightingFormat.STILL_POINT);
        }
    }

    /**
     * A known star in the field, relative to the centre of rotation.
     *
     * @param fields its distance in field widths, to a hundredth
     * @param clock its direction on the clock face, to a tenth of an hour
     */
    record StarPlace(String star, double fields, double clock) {}

    /**
     * The drift of a star.
     *
     * @param began when it was set on the mark
     * @param moved how far, in the unit that the optic allows
     * @param northward whether north, or south
     * @param optic looked through, if the rig has one
     */
    record Drifted(
            String star, Instant began, Duration length, ReadLength moved, boolean northward, Optional<Optic> optic)
            implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.drifted(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.of(SightingFormat.DRIFT);
        }
    }

    /**
     * A frame; its pixels come from {@link PracticeCamera}.
     *
     * @param number counted from 1
     * @param middle of the exposure
     * @param turned in right ascension from home, westward
     */
    record FrameTaken(int number, Instant middle, Angle turned) implements ObservedReadings {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.frameTaken(this);
        }

        @Override
        public Optional<SightingFormat> loggedAs() {
            return Optional.empty();
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R nothing(Nothing seen);

        R onCompass(OnCompass seen);

        R onScale(OnScale seen);

        R whileRocking(WhileRocking seen);

        R drifted(Drifted seen);

        R frameTaken(FrameTaken seen);
    }
}
