package polewright.alignment.allowance;

import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/**
 * The convex zone of axis offsets that tonight's work tolerates.
 *
 * <p>Advice asks only these questions. What follows the edge itself, as probability, pictures and words do, tells the two
 * shapes apart.
 */
public sealed interface Allowance permits DiscAllowance, WorkZone {
    boolean contains(AxisOffset offset);

    /** The offset to aim for: the zone's deepest point. Not always the pole itself. */
    AxisOffset bestAim();

    /** How far {@link #bestAim} lies from the nearest edge. */
    Angle depth();

    /** The zone's extent in east. */
    Span eastSpan();

    /** The zone's extent in up along a line of constant east; empty outside {@link #eastSpan}. */
    Optional<Span> upSpanAt(Angle east);

    /** In plain words for the person: what is tolerated. */
    String words();

    /** From {@code low} to {@code high}. */
    record Span(Angle low, Angle high) {}
}
