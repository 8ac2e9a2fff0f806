package polewright.alignment.allowance;

import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A disc about the true pole.
 *
 * @param radius largest axis offset, on the sky
 */
public record DiscAllowance(Angle radius) implements Allowance {
    /** For visual observing: an object stays in a medium-power field for a long look (common practice). */
    public static final DiscAllowance VISUAL = new DiscAllowance(Angle.ofArcminutes(5));

    public DiscAllowance {
        if (!(radius.arcminutes() >= 0.05 && radius.degrees() <= 10)) {
            throw new InputRefused(
                    "an allowance of " + PlainNumber.of(radius.arcminutes()) + " arcminutes is outside 0.05 to 600",
                    "give how far the axis may be off the pole, in arcminutes; 5 suits visual observing");
        }
    }

    @Override
    public boolean contains(AxisOffset offset) {
        return offset.distance().compareTo(radius) <= 0;
    }

    @Override
    public AxisOffset bestAim() {
        return AxisOffset.NONE;
    }

    @Override
    public Angle depth() {
        return radius;
    }

    @Override
    public Span eastSpan() {
        return new Span(radius.negated(), radius);
    }

    @Override
    public Optional<Span> upSpanAt(Angle east) {
        double square = radius.radians() * radius.radians() - east.radians() * east.radians();
        if (square < 0) {
            return Optional.empty();
        }
        Angle half = new Angle(Math.sqrt(square));
        return Optional.of(new Span(half.negated(), half));
    }

    @Override
    public String words() {
        return "within " + PlainNumber.of(radius.arcminutes()) + "′ of the pole";
    }
}
