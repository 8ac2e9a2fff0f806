package polewright.bench.independent;

/** A mistake that a person makes in a night, once or all night long. */
enum Mistake {
    DRIFT_SIGN("north and south of a drift exchanged"),
    WRONG_STAR("a bright neighbour watched for the star asked"),
    OTHER_SIDE("a star on the other side of the meridian watched"),
    REVERSED_TURN("a turn made the other way round"),
    UNLOGGED_TURN("a turn made and not logged"),
    OTHER_SCREW("the screws exchanged in a turn"),
    VIEW("the finder inverts, told as erect"),
    COMPASS_END("the compass read from its other end"),
    DECLINATION_SIGN("the magnetic declination with the other sign"),
    CLOCK_HOURS("the clock wrong by whole hours"),
    DATE("the date wrong by a day"),
    LATITUDE_SIGN("latitude with the other sign"),
    LONGITUDE_SIGN("longitude with the other sign"),
    SWAPPED("latitude and longitude exchanged");

    private final String words;

    Mistake(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** Whether it affects everything that the person states, from the first event on. */
    boolean isOfTheWholeNight() {
        return switch (this) {
            case VIEW, DECLINATION_SIGN, CLOCK_HOURS, DATE, LATITUDE_SIGN, LONGITUDE_SIGN, SWAPPED -> true;
            default -> false;
        };
    }

    /** Whether it places every sighting elsewhere or at another time. */
    boolean isOfTimeOrPlace() {
        return switch (this) {
            case CLOCK_HOURS, DATE, LATITUDE_SIGN, LONGITUDE_SIGN, SWAPPED -> true;
            default -> false;
        };
    }
}
