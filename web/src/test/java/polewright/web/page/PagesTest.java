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
                List<Page> beside = Pages.beside(page);
                if (entry.pages().size() == 1 || page.path().equals("/more")) {
                    assertThat(beside).as(page.path()).isEmpty();
                } else {
                    assertThat(beside).as(page.path()).contains(page).hasSizeGreaterThan(1);
                    assertThat(entry.pages()).containsAll(beside);
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
