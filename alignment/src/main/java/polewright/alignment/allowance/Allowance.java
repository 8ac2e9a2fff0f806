package polewright.alignment.allowance;

import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/**
 * The convex zone of axis offsets that tonight's work tolerates.
 *
 * <p>The advice needs only these methods. Code that follows the edge itself (probability, pictures, text) distinguishes
 * the two shapes.
 */
public sealed interface Allowance permits DiscAllowance, WorkZone {
    boolean contains(AxisOffset offset);

    /** The offset to aim for: the zone's deepest point. Not always the pole itself. */
    AxisOffset bestAim();

    /** Distance from {@link #bestAim} to the nearest edge. */
    Angle depth();

    /** The zone's extent in east. */
    Span eastSpan();

    /** The zone's extent in up at a constant east; empty outside {@link #eastSpan}. */
    Optional<Span> upSpanAt(Angle east);

    /** What is tolerated, in plain words for the user. */
    String words();

    /** From {@code low} to {@code high}. */
    record Span(Angle low, Angle high) {}
}
