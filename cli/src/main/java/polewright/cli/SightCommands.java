package polewright.cli;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.rig.ClockDirection;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.magnetic.MagneticModel;

/** One command for each kind of sighting. */
@Command(
        name = "sight",
        description = "Log a sighting: anything that shows where the axis points.",
        subcommands = {
            SightCommands.Compass.class,
            SightCommands.Scale.class,
            SightCommands.Shadow.class,
            SightCommands.Bearing.class,
            SightCommands.Altitude.class,
            SightCommands.Still.class,
            SightCommands.Drift.class,
            SightFramesCommands.Turned.class,
            SightFramesCommands.Drift.class
        })
final class SightCommands {
    @Command(name = "compass", description = "Bearing of the axis by magnetic compass, toward the elevated pole.")
    static final class Compass extends SightCommand {
        @Parameters(paramLabel = "BEARING", description = "Degrees from magnetic north, clockwise.")
        private double bearingDeg;

        @Option(
                names = "--declination",
                paramLabel = "DEG",
                description = "Magnetic declination, east positive. Default: by the magnetic model for site and date.")
        private @Nullable Double declinationDeg;

        @Option(names = "--sigma", paramLabel = "DEG", description = "Uncertainty of the reading, 1 sigma. Default: 3.")
        private @Nullable Double sigmaDeg;

        Compass(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            Instant when = at(bench);
            Angle declination = declinationDeg != null
                    ? Angle.ofDegrees(declinationDeg)
                    : MagneticModel.wmm2025().field(begun.site(), when).declination();
            if (!(Math.abs(bearingDeg) <= 360)) {
                throw new InputRefused(
                        "a bearing of " + PlainNumber.asTyped(bearingDeg) + " degrees is beyond 360",
                        "read the compass again");
            }
            return new CompassBearing(
                    when, Angle.ofDegrees(bearingDeg), declination, degrees(sigmaDeg, CompassBearing.USUAL_SIGMA));
        }
    }

    @Command(name = "scale", description = "Altitude of the axis by the wedge's scale, on a level base.")
    static final class Scale extends SightCommand {
        // Farther from the latitude than any careless reading, while its complement is near: the wrong end of the
        // scale.
        private static final double SURELY_OFF_DEG = 10;
        private static final double CLOSE_DEG = 5;

        @Parameters(paramLabel = "ALTITUDE", description = "Degrees above the horizon, as the scale reads.")
        private double readDeg;

        @Option(names = "--from-zenith", description = "The scale counts down from the zenith: 90 minus the altitude.")
        private boolean fromZenith;

        @Option(
                names = "--from-horizon",
                description = "The scale counts from the horizon, although the reading looks unlikely.")
        private boolean fromHorizon;

        @Option(names = "--sigma", paramLabel = "DEG", description = "Uncertainty of the reading, 1 sigma. Default: 1.")
        private @Nullable Double sigmaDeg;

        Scale(Workbench workbench) {
            super(workbench);
        }

        @Override
        boolean isMeantAsTyped() {
            return fromHorizon || super.isMeantAsTyped();
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            if (!(readDeg >= -90 && readDeg <= 90)) {
                throw new InputRefused(
                        "an altitude of " + PlainNumber.asTyped(readDeg) + " degrees is outside -90 to 90",
                        "read the scale again");
            }
            if (fromZenith && fromHorizon) {
                throw new WrongUsage("a scale counts from the zenith or from the horizon. Give one of the two.");
            }
            double latitudeDeg = begun.site().poleAltitude().degrees();
            boolean looksTurned = Math.abs(readDeg - latitudeDeg) > SURELY_OFF_DEG
                    && Math.abs(90 - readDeg - latitudeDeg) < CLOSE_DEG;
            if (looksTurned && !fromZenith && !isMeantAsTyped()) {
                throw new InputRefused(
                        PlainNumber.asTyped(readDeg) + " degrees is far from your latitude ("
                                + PlainNumber.of(latitudeDeg) + "), but 90 - " + PlainNumber.asTyped(readDeg) + " = "
                                + PlainNumber.of(90 - readDeg),
                        "if the scale counts from the zenith, add --from-zenith; otherwise add --from-horizon");
            }
            return new LevelledScale(
                    at(bench),
                    Angle.ofDegrees(fromZenith ? 90 - readDeg : readDeg),
                    degrees(sigmaDeg, LevelledScale.USUAL_SIGMA));
        }
    }

    @Command(name = "shadow", description = "Angle from a plumb line's shadow to the axis, clockwise seen from above.")
    static final class Shadow extends SightCommand {
        @Parameters(
                paramLabel = "ANGLE",
                description = "Degrees, clockwise from the shadow to the axis; may be negative.")
        private double angleDeg;

        @Option(
                names = "--body",
                paramLabel = "BODY",
                converter = BodyFinder.class,
                description = "What casts the shadow: sun (default) or moon.")
        private @Nullable SkyBody body;

        @Option(names = "--sigma", paramLabel = "DEG", description = "Uncertainty of the angle, 1 sigma. Default: 0.7.")
        private @Nullable Double sigmaDeg;

        Shadow(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            return new BodyBearing(
                    at(bench),
                    body == null ? SolarSystemBody.SUN : body,
                    BodyBearing.Line.SHADOW,
                    Angle.ofDegrees(angleDeg),
                    degrees(sigmaDeg, BodyBearing.USUAL_SIGMA));
        }
    }

    @Command(
            name = "bearing",
            description = "Angle from the direction of a star to the axis, clockwise seen from above.")
    static final class Bearing extends SightCommand {
        @Parameters(index = "0", paramLabel = "BODY", converter = BodyFinder.class, description = "The star.")
        private SkyBody body;

        @Parameters(index = "1", paramLabel = "ANGLE", description = "Degrees, clockwise from the star to the axis.")
        private double angleDeg;

        @Option(names = "--sigma", paramLabel = "DEG", description = "Uncertainty of the angle, 1 sigma. Default: 0.7.")
        private @Nullable Double sigmaDeg;

        Bearing(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            return new BodyBearing(
                    at(bench),
                    body,
                    BodyBearing.Line.TOWARD_BODY,
                    Angle.ofDegrees(angleDeg),
                    degrees(sigmaDeg, BodyBearing.USUAL_SIGMA));
        }
    }

    @Command(
            name = "altitude",
            description = "Altitude of the axis minus that of a star, both with the same inclinometer.")
    static final class Altitude extends SightCommand {
        @Parameters(index = "0", paramLabel = "BODY", converter = BodyFinder.class, description = "The star.")
        private SkyBody body;

        @Parameters(index = "1", paramLabel = "DIFFERENCE", description = "Degrees, axis minus star.")
        private double differenceDeg;

        @Option(names = "--sigma", paramLabel = "DEG", description = "Uncertainty, 1 sigma. Default: 0.2.")
        private @Nullable Double sigmaDeg;

        Altitude(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            return new BodyAltitude(
                    at(bench), body, Angle.ofDegrees(differenceDeg), degrees(sigmaDeg, BodyAltitude.USUAL_SIGMA));
        }
    }

    @Command(
            name = "still",
            description = "Position of a star in the field, from the centre of rotation while the tube swings in"
                    + " right ascension.",
            footer = {
                "",
                "For example, with Polaris a quarter of the finder's field to the lower right:",
                "  polewright sight still polaris --distance 0.25 --toward 4.5 --with finder"
            })
    static final class Still extends SightCommand {
        @Parameters(paramLabel = "STAR", converter = BodyFinder.class, description = "The star, usually polaris.")
        private SkyBody star;

        @Option(
                names = "--distance",
                required = true,
                paramLabel = "FIELDS",
                description = "From the centre of rotation to the star, as a fraction of the field width: 0.25.")
        private double fields;

        @Option(
                names = "--toward",
                required = true,
                paramLabel = "CLOCK",
                description =
                        "Direction from the centre of rotation to the star, as on a clock face: 12 is up, 4.5 half"
                                + " past four.")
        private double clock;

        @Mixin
        private ViewOptions view;

        @Option(
                names = "--sigma",
                paramLabel = "FIELDS",
                description = "Uncertainty of the star's position, as a fraction of the field width. Default: 0.05.")
        private double sigmaFields = StillPoint.USUAL_SIGMA_OF_FIELD;

        Still(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            Angle field = view.field(begun.rig());
            return new StillPoint(
                    at(bench),
                    star,
                    ReadLength.ofField(fields, field),
                    new ClockDirection(clock),
                    view.view(begun.rig()),
                    field.times(sigmaFields));
        }
    }

    @Command(
            name = "drift",
            description = "Drift of a star north or south while the mount tracked it.",
            footer = {
                "",
                "For example, 2 1/2 divisions of the rig's reticle south in 5 minutes:",
                "  polewright sight drift rigel --minutes 5 --moved 2.5 --toward s --with reticle",
                "or a tenth of a 0.8 degree field, toward the lower edge in a star diagonal:",
                "  polewright sight drift rigel --minutes 5 --moved 0.1 --unit fields \\",
                "      --toward 6 --field 0.8 --view mirrored",
                "or with a plain crosshair, a fifth of the way from centre to edge:",
                "  polewright sight drift rigel --minutes 5 --moved 0.2 --unit radii \\",
                "      --toward n --with eyepiece",
                "or from the centre of a ring 0.2 degrees wide to its edge, in 12 minutes:",
                "  polewright sight drift rigel --minutes 12 --moved 1 --unit radii \\",
                "      --toward n --field 0.2"
            })
    static final class Drift extends SightCommand {
        @Parameters(paramLabel = "STAR", converter = BodyFinder.class, description = "The star.")
        private SkyBody star;

        @Option(names = "--minutes", required = true, paramLabel = "MINUTES", description = "How long it was watched.")
        private double minutes;

        @Mixin
        private DriftOptions drift;

        @Mixin
        private ViewOptions view;

        Drift(Workbench workbench) {
            super(workbench);
        }

        @Override
        Sighting sighting(Workbench bench, NightEvent.Begun begun) {
            if (!(minutes > 0 && minutes <= 360)) {
                throw new InputRefused(
                        "a drift of " + PlainNumber.asTyped(minutes) + " minutes is outside 0 to 360",
                        "give how long the star was watched, at least a minute or two");
            }
            Duration length = Duration.ofMillis(Math.round(minutes * 60_000));
            ReadLength moved = drift.moved(view, begun.rig());
            DriftDirection direction = drift.direction(view, begun.rig());
            return new StarDrift(startOf(bench, length), length, star, moved, direction, drift.sigma(moved));
        }
    }
}
