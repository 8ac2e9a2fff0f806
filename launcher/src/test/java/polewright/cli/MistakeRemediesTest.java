package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import polewright.alignment.fix.Mistake;
import polewright.sky.place.Site;

class MistakeRemediesTest {
    @Test
    void correctedSite_keepsItsHeight() {
        Mistake swapped = new Mistake.SiteWrong(Site.ofDegrees(54.6, -2.9, 240), "latitude and longitude were swapped");

        assertThat(MistakeRemedies.remedy(swapped)).isEqualTo("polewright site correct --site=54.6,-2.9,240");
    }
}
