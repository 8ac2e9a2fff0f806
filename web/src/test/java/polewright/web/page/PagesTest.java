package polewright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.web.form.CommandForms;

class PagesTest {
    @Test
    void menu_hasAtMostSixEntries() {
        assertThat(Pages.menu()).hasSizeBetween(2, 6);
        assertThat(Pages.menu().get(0).first()).isEqualTo(Pages.now());
    }

    @Test
    void everyPage_isUnderOneEntry() {
        assertThat(Pages.all()).allSatisfy(page -> assertThat(entries(page)).hasSize(1));
    }

    /** Forms without an address of their own in a menu's page: shown alone when an entry is wrong. */
    @Test
    void formsOfPracticeAndLaptop_areUnderOneEntry() {
        assertThat(CommandForms.practice())
                .allSatisfy(form -> assertThat(entries(Pages.of(form))).containsExactly("More"));
        assertThat(CommandForms.laptop())
                .allSatisfy(form -> assertThat(entries(Pages.of(form))).containsExactly("More"));
    }

    @Test
    void pageUnderAnEntry_showsTheOthers_unlessItIsTheListOfThem() {
        for (MenuEntry entry : Pages.menu()) {
            for (Page page : entry.pages()) {
                List<Page> siblings = Pages.siblings(page);
                if (entry.pages().size() == 1 || page.path().equals("/more")) {
                    assertThat(siblings).as(page.path()).isEmpty();
                } else {
                    assertThat(siblings).as(page.path()).contains(page).hasSizeGreaterThan(1);
                    assertThat(entry.pages()).containsAll(siblings);
                }
            }
        }
    }

    private static List<String> entries(Page page) {
        return Pages.menu().stream()
                .filter(entry -> entry.holds(page))
                .map(MenuEntry::name)
                .toList();
    }
}
