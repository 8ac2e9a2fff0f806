package polewright.session;

import java.time.Instant;
import java.util.Random;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;

/** Random values of every sort: round, odd, tiny, negative zero; bodies, views, texts. */
final class RandomValues {
    private static final Instant FIRST = Instant.parse("1972-01-01T00:00:00Z");
    private static final long SPAN_SECONDS = 128L * 365 * 86400;
    private static final String[] TEXTS = {
        "Larkfell",
        "Tussock Flat",
        "quote \" and \\ backslash",
        "two\nlines\tand a tab",
        "ψ Ursae Majoris 🔭",
        "\u0000\u2028"
    };

    private final Random random;

    RandomValues(Random random) {
        this.random = random;
    }

    Random random() {
        return random;
    }

    Instant instant() {
        Instant whole = FIRST.plusSeconds((long) (random.nextDouble() * SPAN_SECONDS));
        return random.nextBoolean() ? whole : whole.plusNanos(random.nextInt(1_000_000_000));
    }

    Angle signed(double limitRad) {
        return switch (random.nextInt(8)) {
            case 0 -> Angle.ZERO;
            case 1 -> Angle.ZERO.negated();
            case 2 -> new Angle(random.nextDouble() * 1e-300);
            case 3 -> Angle.ofDegrees(Math.rint(Math.toDegrees(limitRad) * (random.nextDouble() - 0.5) * 100) / 100);
            default -> new Angle(limitRad * (2 * random.nextDouble() - 1));
        };
    }

    /** Above the smallest accepted uncertainty, up to a number of degrees. */
    Angle sigma(double limitDeg) {
        double any = limitDeg * (1 - random.nextDouble()) * (random.nextBoolean() ? 1 : 1e-3);
        return Angle.ofDegrees(Math.max(any, 0.06 / 3600));
    }

    double number(double low, double high) {
        double any = low + (high - low) * random.nextDouble();
        double rounded = Math.rint(any * 10) / 10;
        return random.nextBoolean() && rounded >= low && rounded <= high ? rounded : any;
    }

    String text() {
        return oneOf(TEXTS);
    }

    <T> T oneOf(T[] values) {
        return values[random.nextInt(values.length)];
    }

    SkyBody body() {
        // The altitude sighting refuses the Sun; a star or any other body of the solar system is valid everywhere.
        SolarSystemBody wanderer = oneOf(SolarSystemBody.values());
        return random.nextInt(3) == 0 && wanderer != SolarSystemBody.SUN ? wanderer : star();
    }

    FixedStar star() {
        return new FixedStar(
                text(),
                new CatalogueStar(
                        signed(2 * Math.PI),
                        signed(Math.PI / 2),
                        number(-5000, 5000),
                        number(-5000, 5000),
                        number(0, 800),
                        number(-300, 300)));
    }

    /** No telescope is ever pointed at the Sun. */
    SkyBody bodyButTheSun() {
        SkyBody body = body();
        return body == SolarSystemBody.SUN ? SolarSystemBody.MOON : body;
    }

    View view() {
        return new View(oneOf(Orientation.values()), signed(2 * Math.PI));
    }

    ClockDirection clock() {
        return new ClockDirection(number(0, 12));
    }
}
