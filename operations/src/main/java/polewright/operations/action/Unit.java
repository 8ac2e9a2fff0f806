package polewright.operations.action;

/** The unit of a figure that is typed. */
public enum Unit {
    DEGREES("°", "degrees", "DEG"),
    ARCMINUTES("′", "arcminutes", "ARCMIN"),
    ARCSECONDS("″", "arcseconds", "ARCSEC"),
    MINUTES("min", "minutes", "MINUTES"),
    SECONDS("s", "seconds", "SECONDS"),
    /** A direction in a view: 12 is the top, 3 the right. */
    CLOCK_HOURS("h", "hours", "CLOCK"),
    FIELD_WIDTHS("field widths", "field widths", "FIELDS"),
    TURNS("turns", "turns", "TURNS"),
    METRES("m", "metres", "METRES"),
    HECTOPASCALS("hPa", "hectopascals", "HPA"),
    CELSIUS("°C", "degrees Celsius", "CELSIUS"),
    MILLIMETRES("mm", "millimetres", "MM"),
    MICROMETRES("µm", "micrometres", "MICRONS"),
    PIXELS("px", "pixels", "PIXELS"),
    NONE("", "", "N");

    private final String symbol;
    private final String words;
    private final String placeholder;

    Unit(String symbol, String words, String placeholder) {
        this.symbol = symbol;
        this.words = words;
        this.placeholder = placeholder;
    }

    /** Its symbol, written after a figure: {@code °}; empty for a plain number. */
    public String symbol() {
        return symbol;
    }

    /** {@code degrees}; empty for a plain number. */
    public String words() {
        return words;
    }

    /** Its placeholder in the help of a command: {@code DEG}. */
    public String placeholder() {
        return placeholder;
    }
}
