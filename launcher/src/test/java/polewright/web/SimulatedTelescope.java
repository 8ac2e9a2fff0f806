package polewright.web;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedObserver;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The wedge and observer of the practice nights. */
final class SimulatedTelescope implements TelescopeByEye {
    private static final Rig RIG = Rig.typicalForkOnWedge();

    private final Random random;
    private final SimulatedObserver observer;
    private HiddenWedge wedge;

    SimulatedTelescope(Site site, AxisOffset offset, long seed) {
        random = new Random(seed);
        wedge = HiddenWedge.of(site, RIG, offset, random);
        observer = new SimulatedObserver(Weather.standardAt(site.heightMetres()), random);
    }

    @Override
    public AxisOffset offset() {
        return wedge.offset();
    }

    @Override
    public void turn(HandTurns azimuth, HandTurns altitude) {
        wedge = wedge.turned(azimuth, altitude, random);
    }

    @Override
    public void clamp() {
        wedge = wedge.clamped(random);
    }

    @Override
    public void moveByHand(Angle azimuth, Angle altitude) {
        wedge = wedge.moved(azimuth, altitude, random);
    }

    @Override
    public double compassDeg(Instant at) {
        return observer.compass(wedge, at, CompassBearing.USUAL_SIGMA)
                .magneticBearing()
                .degrees();
    }

    @Override
    public double scaleDeg(Instant at) {
        return observer.scale(wedge, at, LevelledScale.USUAL_SIGMA).altitude().degrees();
    }

    @Override
    public double shadowDeg(Instant at) {
        return observer.bearing(wedge, at, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, BodyBearing.USUAL_SIGMA)
                .clockwise()
                .degrees();
    }

    @Override
    public StarInView stillPoint(FixedStar star, Instant at, Optic optic) {
        StillPoint seen = observer.stillPoint(wedge, at, star, optic);
        return new StarInView(seen.distance().count(), seen.toward().hours());
    }

    @Override
    public double northwardArcsec(FixedStar star, Instant from, Duration watched) {
        StarDrift seen = observer.drift(wedge, from, star, watched, StarDrift.usualSigma(RIG));
        double size = seen.drift().count();
        return ((DriftDirection.OnSky) seen.direction()).north() ? size : -size;
    }
}
