package polewright.alignment.sighting;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/**
 * A length on the sky in the unit in which it was read.
 *
 * @param count number of units, not negative
 * @param unit the unit
 * @param perUnit angle on the sky of one unit
 */
public record ReadLength(double count, Unit unit, Angle perUnit) {
    private static final Angle ARCSECOND = Angle.ofArcseconds(1);

    /** The unit in which the observer counted. */
    public enum Unit {
        ARCSECONDS("arcseconds"),
        DIVISIONS("reticle divisions"),
        FIELDS("field widths"),
        PIXELS("pixels");

        private final String words;

        Unit(String words) {
            this.words = words;
        }

        /** The unit in plain words, plural. */
        public String words() {
            return words;
        }
    }

    public ReadLength {
        if (!(perUnit.radians() > 0 && perUnit.degrees() <= 60)) {
            throw new InputRefused(
                    PlainNumber.of(perUnit.degrees()) + " degrees for one of the " + unit.words()
                            + " is outside 0 to 60",
                    unit == Unit.FIELDS
                            ? "give the true field width in degrees, above 0"
                            : "give the angle of one, above 0");
        }
        if (unit == Unit.ARCSECONDS && !perUnit.equals(ARCSECOND)) {
            throw new InputRefused(
                    "one arcsecond cannot be " + perUnit.arcseconds() + " arcseconds",
                    "count in divisions or pixels when one of them is not one arcsecond");
        }
        if (!(count >= 0 && Double.isFinite(count))) {
            throw new InputRefused(
                    "a length of " + PlainNumber.of(count) + " " + unit.words() + " is not possible",
                    "give 0 or more, and the direction separately");
        }
    }

    public static ReadLength ofArcseconds(double arcseconds) {
        return new ReadLength(arcseconds, Unit.ARCSECONDS, ARCSECOND);
    }

    public static ReadLength ofDivisions(double divisions, Angle perDivision) {
        return new ReadLength(divisions, Unit.DIVISIONS, perDivision);
    }

    public static ReadLength ofField(double fraction, Angle fieldWidth) {
        return new ReadLength(fraction, Unit.FIELDS, fieldWidth);
    }

    public static ReadLength ofPixels(double pixels, Angle perPixel) {
        return new ReadLength(pixels, Unit.PIXELS, perPixel);
    }

    /** Written next to the other fields of a sighting, which has one length. */
    void write(FieldWriter out) {
        out.number("count", count).word("unit", unit);
        switch (unit) {
            case FIELDS -> out.angle("field_deg", perUnit);
            case DIVISIONS, PIXELS -> out.angle("per_unit_arcsec", perUnit);
            case ARCSECONDS -> {
                // An arcsecond needs no scale.
            }
        }
    }

    static ReadLength read(FieldReader in) {
        double count = in.number("count");
        Unit unit = in.choice("unit", Unit.class);
        Angle perUnit = switch (unit) {
            case FIELDS -> in.angle("field_deg");
            case DIVISIONS, PIXELS -> in.angle("per_unit_arcsec");
            case ARCSECONDS -> ARCSECOND;
        };
        return in.made(() -> new ReadLength(count, unit, perUnit));
    }

    public Angle angle() {
        return perUnit.times(count);
    }
}
