package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import polewright.alignment.sighting.ReadLength;
import polewright.drawing.chart.RockedField;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;

/** What a deed let one see, in the figures that a person would read off and type. */
public sealed interface ObservedReadings {
    /** A deed that shows nothing. */
    record Nothing() implements ObservedReadings {}

    /**
     * On the compass.
     *
     * @param bearingDeg from magnetic north, clockwise, to a whole degree
     */
    record OnCompass(double bearingDeg) implements ObservedReadings {}

    /**
     * On the wedge's scale.
     *
     * @param altitudeDeg to a quarter of a degree
     */
    record OnScale(double altitudeDeg) implements ObservedReadings {}

    /**
     * In an optic, while the tube was rocked.
     *
     * @param field what was seen; where the still point is, has to be seen from the arcs
     * @param star where a known star stood, if there was one in the field
     */
    record WhileRocking(Optic optic, RockedField field, Optional<StarPlace> star) implements ObservedReadings {}

    /**
     * A known star in the field, from the still point.
     *
     * @param fields its distance in field widths, to a hundredth
     * @param clock its direction on the clock face, to a tenth of an hour
     */
    record StarPlace(String star, double fields, double clock) {}

    /**
     * How a star drifted.
     *
     * @param began when it was set on the mark
     * @param moved how far, in what the optic lets one count
     * @param northward whether north, or south
     * @param optic looked through, if the rig has one
     */
    record Drifted(
            String star, Instant began, Duration length, ReadLength moved, boolean northward, Optional<Optic> optic)
            implements ObservedReadings {}

    /**
     * A frame was taken; its pixels are {@link PracticeCamera}'s.
     *
     * @param number counted from 1
     * @param middle of the exposure
     * @param turned in right ascension from home, westward
     */
    record FrameTaken(int number, Instant middle, Angle turned) implements ObservedReadings {}
}
