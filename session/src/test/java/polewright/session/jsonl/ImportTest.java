package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.fields.BodyNames;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** What a hand-written file may omit, and the defaults. */
class ImportTest {
    private static final FixedStar ACHERNAR =
            new FixedStar("Achernar", CatalogueStar.fixed(Angle.ofDegrees(24.43), Angle.ofDegrees(-57.24)));
    private static final BodyNames NAMES = name -> name.equals("Achernar") ? Optional.of(ACHERNAR) : Optional.empty();
    private static final Instant AT = Instant.parse("2026-01-15T09:00:00Z");

    private static List<LoggedEvent> read(String... lines) throws IOException {
        return JsonLines.read(new StringReader(String.join("\r\n", lines).replace('\'', '"')), NAMES)
                .orThrow();
    }

    private static Sighting sighting(String keys) throws IOException {
        List<LoggedEvent> night = read(
                "{'event':'begin','at':'2026-01-15T08:00:00Z','site_name':'Tussock Flat',"
                        + "'site':{'lat_deg':-43.95,'lon_deg':170.4,'height_m':710}}",
                "{'at':'2026-01-15T09:00:00Z'," + keys + "}");
        return ((NightEvent.SightingTaken) night.get(1).event()).sighting();
    }

    @Test
    void begin_defaultsToUsualWeatherRigAndAllowance() throws IOException {
        assertThat(read("\uFEFF{'event':'begin','at':'2026-01-15T21:00:00+12:00','site_name':'Tussock Flat',"
                        + "'site':{'lat_deg':-43.95,'lon_deg':170.4}}"))
                .containsExactly(new LoggedEvent(
                        1,
                        AT,
                        new NightEvent.Begun(
                                "Tussock Flat",
                                Site.ofDegrees(-43.95, 170.4, 0),
                                Weather.standardAt(0),
                                Rig.typicalForkOnWedge(),
                                DiscAllowance.VISUAL)));
    }

    @Test
    void eventWithoutANumber_followsTheOneBefore_andGapsAreKept() throws IOException {
        assertThat(read(
                        "{'event':'begin','at':'2026-01-15T09:00:00Z','site_name':'Larkfell',"
                                + "'site':{'lat_deg':54.6,'lon_deg':-2.9,'height_m':240}}",
                        "{'event':'clamp','at':'2026-01-15T09:00:00Z'}",
                        "",
                        "{'event':'knock','at':'2026-01-15T09:00:00Z','seq':7}",
                        "{'event':'withdraw','at':'2026-01-15T09:00:00Z','withdrawn_seq':7}"))
                .extracting(LoggedEvent::seq)
                .containsExactly(1L, 2L, 7L, 8L);
    }

    @Test
    void sighting_defaultsToItsTimeOfEntryAndUsualUncertainty() throws IOException {
        assertThat(sighting("'event':'compass','magnetic_bearing_deg':156.2,'declination_deg':23.7"))
                .isEqualTo(new CompassBearing(
                        AT, Angle.ofDegrees(156.2), Angle.ofDegrees(23.7), CompassBearing.USUAL_SIGMA));
        assertThat(sighting("'event':'shadow','body':'sun','clockwise_deg':-31.5,'seen_at':'2026-01-15T07:10:00.5Z'"))
                .isEqualTo(new BodyBearing(
                        Instant.parse("2026-01-15T07:10:00.5Z"),
                        SolarSystemBody.SUN,
                        BodyBearing.Line.SHADOW,
                        Angle.ofDegrees(-31.5),
                        BodyBearing.USUAL_SIGMA));
    }

    @Test
    void stillPoint_defaultsToATwentiethOfTheField() throws IOException {
        assertThat(sighting("'event':'still_point','star':'Achernar','count':0.25,'unit':'fields','field_deg':6,"
                        + "'star_clock':0,'view':{'orientation':'inverted'}"))
                .isEqualTo(new StillPoint(
                        AT,
                        ACHERNAR,
                        ReadLength.ofField(0.25, Angle.ofDegrees(6)),
                        new ClockDirection(12),
                        View.of(Orientation.INVERTED),
                        Angle.ofDegrees(6).times(0.05)));
    }

    @Test
    void drift_defaultsToTheUncertaintyOfItsUnit() throws IOException {
        assertThat(drift("'count':2,'unit':'divisions','per_unit_arcsec':15").sigma())
                .isEqualTo(Angle.ofArcseconds(15).times(0.25));
        assertThat(drift("'count':0.1,'unit':'fields','field_deg':0.5").sigma())
                .isEqualTo(Angle.ofDegrees(0.5).times(0.02));
        assertThat(drift("'count':12,'unit':'arcseconds'").sigma())
                .isEqualTo(Angle.ofArcseconds(1).times(3));
        assertThat(drift("'count':7,'unit':'pixels','per_unit_arcsec':1.2").sigma())
                .isEqualTo(Angle.ofArcseconds(1.2));
        assertThat(drift("'count':12,'unit':'arcseconds','sigma_arcsec':1").sigma())
                .isEqualTo(Angle.ofArcseconds(1));
        assertThat(drift("'count':12,'unit':'arcseconds'").length()).isEqualTo(Duration.ofSeconds(270));
    }

    @Test
    void driftDirection_canBeGivenInThreeWays() throws IOException {
        assertThat(drift("'count':1,'unit':'arcseconds'").direction()).isEqualTo(new DriftDirection.OnSky(false));
        assertThat(towards("'toward_clock':3,'view':{'orientation':'mirrored','turned_deg':90}"))
                .isEqualTo(new DriftDirection.TowardEdge(
                        new ClockDirection(3), new View(Orientation.MIRRORED, Angle.ofDegrees(90))));
        assertThat(towards("'toward_clock':3,'west_clock':6.5,'mirrored':true"))
                .isEqualTo(
                        new DriftDirection.TowardEdgeGivenWest(new ClockDirection(3), new ClockDirection(6.5), true));
    }

    private static StarDrift drift(String keys) throws IOException {
        return (StarDrift) sighting("'event':'drift','star':'Achernar','minutes':4.5,'toward':'south'," + keys);
    }

    private static DriftDirection towards(String keys) throws IOException {
        return ((StarDrift) sighting(
                        "'event':'drift','star':'Achernar','minutes':4.5,'count':1,'unit':'arcseconds'," + keys))
                .direction();
    }
}
