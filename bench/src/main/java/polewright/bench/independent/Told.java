package polewright.bench.independent;

import java.time.Duration;
import java.time.Instant;
import polewright.alignment.allowance.DiscAllowance;
import polewright.bench.independent.truth.Place;
import polewright.mount.rig.Rig;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The details of a whole night as the person states them: the site, the rig, and the time by a clock.
 *
 * @param latitudeDeg as typed
 * @param longitudeDeg as typed
 * @param heightMetres as typed
 * @param rig as stated
 * @param clockAhead clock time minus true time
 * @param declinationTurned whether the magnetic declination is taken with the wrong sign
 */
record Told(
        double latitudeDeg,
        double longitudeDeg,
        double heightMetres,
        Rig rig,
        Duration clockAhead,
        boolean declinationTurned) {
    private static final Instant MID_2026 = Instant.parse("2026-07-01T00:00:00Z");

    /** Everything stated correctly. */
    static Told truly(Scene scene, Rig rig) {
        return new Told(
                Math.toDegrees(scene.place().latitude()),
                Math.toDegrees(scene.place().longitude()),
                scene.place().heightMetres(),
                rig,
                Duration.ZERO,
                false);
    }

    Instant clock(Instant trueTime) {
        return trueTime.plus(clockAhead);
    }

    Site site() {
        return Site.ofDegrees(latitudeDeg, longitudeDeg, heightMetres);
    }

    NightEvent.Begun begun(double toleratedArcmin) {
        Site site = site();
        return new NightEvent.Begun(
                "Larkfell",
                site,
                Weather.standardAt(site.heightMetres()),
                rig,
                new DiscAllowance(Angle.ofArcminutes(toleratedArcmin)));
    }

    /**
     * As the program gives it for the site that was typed, degrees: the World Magnetic Model, the only value taken
     * from there.
     */
    double declinationDeg(Instant trueTime) {
        double model = modelDeclinationDeg(site(), clock(trueTime));
        return declinationTurned ? -model : model;
    }

    /** In the middle of 2026, degrees. */
    static double modelDeclinationDeg(Place place) {
        return modelDeclinationDeg(
                Site.ofDegrees(
                        Math.toDegrees(place.latitude()), Math.toDegrees(place.longitude()), place.heightMetres()),
                MID_2026);
    }

    private static double modelDeclinationDeg(Site site, Instant at) {
        return MagneticModel.wmm2025().field(site, at).declination().degrees();
    }
}
