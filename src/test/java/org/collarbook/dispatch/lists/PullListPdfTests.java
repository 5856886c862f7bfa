package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The sheet is read back by libraries that did not write it: its text and pictures by PDFBox. */
class PullListPdfTests {

    /** Half an inch of a Letter page (612 by 792 points) on each side. */
    private static final float MARGIN = 36;

    private static final Printed NORMAL = Printed.of(MadeList.normal());
    private static final Printed NASTY = Printed.of(MadeList.nasty());

    static Stream<Printed> lists() {
        return Stream.of(NORMAL, NASTY);
    }

    @ParameterizedTest
    @MethodSource("lists")
    void each_code_is_read_from_the_picture_of_its_page_in_the_order_of_the_list(Printed printed) throws IOException {
        var scanned = new ArrayList<String>();
        for (int page = 0; page < printed.pages(); page++) {
            scanned.addAll(Printed.scanned(printed.picture(page)));
        }
        assertThat(scanned).containsExactlyElementsOf(codes(printed.list()));
    }

    @ParameterizedTest
    @MethodSource("lists")
    void each_row_stands_whole_on_one_page(Printed printed) {
        var rows = printed.list().stops().stream().flatMap(stop -> stop.containers().stream())
                .map(PullListPdfTests::row).toList();
        assertThat(rows)
                .allSatisfy(row -> assertThat(printed.texts()).filteredOn(page -> page.contains(row)).hasSize(1));
    }

    /** Its cells from left to right. */
    private static String row(PullList.Pulled one) {
        var kind = one.kind().equals("CYLINDER") ? "" : "stationary tank";
        var from = one.jurisdiction() == null ? "" : "(" + one.jurisdiction() + ")";
        var citation = one.reason().citation() == null ? "" : "(49 CFR 180.209(g))";
        var look = one.check().isEmpty() ? "" : "Look: " + String.join(" ", one.check());
        return shown(String.join("", one.serial(), one.size(), kind, one.specification(), "maker ",
                one.maker() == null ? "not known" : one.maker(), ", made ", ListWords.month(one.manufactured()),
                one.tag() == null ? "no tag: the code has its id" : "tag " + one.tag(),
                one.status().replace("_", ""), one.requirement().equals("SHELL") ? "shell" : "relief valve", from,
                "due", ListWords.month(one.due()), "last day", ListWords.date(one.lastDay()),
                one.action() == PullList.Action.SWAP ? "Swap" : "Work at site", one.reason().text(), citation, look));
    }

    @ParameterizedTest
    @MethodSource("lists")
    void nothing_of_the_list_is_left_out(Printed printed) {
        var list = printed.list();
        var expected = new ArrayList<>(List.of(list.asked().title(), list.caution(), "Thursday, December 3, 2026",
                "Wed, Dec 2, 2026, 20:41 UTC", "D-1, Harrow Hill depot"));
        list.sizes().forEach(size -> expected.add(size.size() + size.load() + "______"
                + ListWords.number(size.inDateAtDepot()) + ListWords.number(size.shortfall())
                + ListWords.number(size.rack()) + ListWords.number(size.overRack())));
        list.stops().forEach(stop -> {
            expected.addAll(List.of(stop.site().name(), ListWords.visits(stop)));
            stop.undetermined().forEach(one -> expected.addAll(List.of(one.serial(), one.missing().getFirst())));
        });
        list.placeDisputed()
                .forEach(one -> expected.addAll(List.of(one.serial(), "S-4, Stop 4, moved there Nov 3, 2026")));
        assertThat(printed.text()).contains(expected.stream().map(PullListPdfTests::shown).toList());
    }

    @ParameterizedTest
    @MethodSource("lists")
    void no_letter_lies_outside_the_margins_and_each_page_tells_its_number(Printed printed) throws IOException {
        var texts = printed.texts();
        for (int page = 0; page < printed.pages(); page++) {
            assertThat(texts.get(page)).contains("Page" + (page + 1) + "of" + printed.pages());
            assertThat(printed.positions(page)).isNotEmpty().allSatisfy(letter -> {
                assertThat(letter.getXDirAdj()).isGreaterThanOrEqualTo(MARGIN - 0.1f);
                assertThat(letter.getXDirAdj() + letter.getWidthDirAdj()).isLessThanOrEqualTo(612 - MARGIN + 0.1f);
                assertThat(letter.getYDirAdj()).isBetween(MARGIN, 792 - MARGIN);
            });
        }
    }

    @Test
    void a_heading_is_followed_by_a_row_on_the_same_page() {
        var printed = NASTY;
        assertThat(printed.texts()).filteredOn(page -> page.contains("DoneScanContainer"))
                .hasSizeGreaterThan(15).allSatisfy(page -> assertThat(page.substring(
                        page.lastIndexOf("DoneScanContainer"))).contains("tag"));
    }

    @Test
    void a_container_that_is_out_of_service_is_framed_and_no_other() throws IOException {
        var printed = NORMAL;
        var pages = printed.texts();
        for (int page = 0; page < pages.size(); page++) {
            var picture = printed.picture(page);
            var text = pages.get(page);
            for (var one : printed.list().stops().stream().flatMap(stop -> stop.containers().stream()).toList()) {
                if (text.contains(one.serial())) {
                    assertThat(linedLeft(picture, lineOf(printed, page, one.serial()))).as(one.serial())
                            .isEqualTo(one.status().equals("ON_HOLD"));
                }
            }
        }
    }

    /** Down the page, in points, to where the serial stands. */
    private static float lineOf(Printed printed, int page, String serial) throws IOException {
        var letters = printed.positions(page);
        var text = new StringBuilder();
        letters.forEach(letter -> text.append(Objects.requireNonNullElse(letter.getUnicode(), " ").charAt(0)));
        return letters.get(text.indexOf(serial)).getYDirAdj();
    }

    private static boolean linedLeft(BufferedImage picture, float y) {
        int row = (int) (y * Printed.DPI / 72);
        int left = (int) (MARGIN * Printed.DPI / 72);
        return Stream.iterate(left - 3, x -> x + 1).limit(7).anyMatch(x -> (picture.getRGB(x, row) & 0xff) < 100);
    }

    @Test
    void what_the_font_has_no_shape_for_is_a_box_and_the_sheet_says_so() throws IOException {
        var printed = NASTY;
        var text = printed.text();
        assertThat(text).contains("CaféŁódź&Sons–Żółć", "Ł-ÇÉ0042", "□-0815", "tag□□-7",
                "□standsforaletterthatthissheetcannotprint");
        for (var page : printed.document().getPages()) {
            for (var font : page.getResources().getFontNames()) {
                assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
            }
        }
    }

    @Test
    void an_empty_list_is_a_page_that_says_so() {
        var printed = Printed.of(MadeList.empty());
        assertThat(printed.pages()).isOne();
        assertThat(printed.texts().getFirst()).contains("Nothinghastocomeback.").doesNotContain("tolookinto");
    }

    @Test
    void a_list_of_nothing_but_unknown_ones_does_not_say_that_all_is_well() {
        var stop = MadeList.nasty().stops().get(1);
        var printed = Printed.of(MadeList.list("Two sites", null, List.of(stop), List.of(), null));
        assertThat(printed.texts().getFirst()).contains(shown("Nothing is known to have to come back. 14 to look"
                + " into: whether they must come back cannot be told."));
    }

    @Test
    void the_same_list_at_the_same_moment_is_the_same_file_with_a_title_language_and_date() {
        assertThat(Printed.of(MadeList.nasty()).file()).isEqualTo(NASTY.file());
        var about = NORMAL.document().getDocumentInformation();
        assertThat(about.getTitle()).isEqualTo("Route N-2, north loop, Thursday, December 3, 2026");
        assertThat(about.getCreationDate().toInstant()).isEqualTo(Instant.parse("2026-12-02T20:41:00Z"));
        assertThat(NORMAL.document().getDocumentCatalog().getLanguage()).isEqualTo("en-US");
        assertThat(NORMAL.document().getPage(0).getMediaBox().getWidth()).isEqualTo(612);
    }

    @Test
    void a_site_with_more_rows_than_are_handed_over_at_once_has_each_of_them_once() {
        var list = MadeList.of(230, true);
        var printed = Printed.of(list);
        var text = printed.text();
        assertThat(list.stops().getFirst().containers()).allSatisfy(one -> assertThat(text).contains(one.serial()));
        assertThat(text.split("madeMay2004", -1)).hasSize(230 + 1);
        // each heading but the first; a piece that goes on further down the same page has none
        assertThat(text.split("continued", -1)).hasSize(text.split("DoneScan", -1).length - 1)
                .hasSizeBetween(20, 50);
    }

    private static List<String> codes(PullList list) {
        var codes = new ArrayList<String>();
        for (var stop : list.stops()) {
            stop.containers().forEach(one -> codes.add(code(one.tag(), one.id())));
            stop.undetermined().forEach(one -> codes.add(code(one.tag(), one.id())));
        }
        list.placeDisputed().forEach(one -> codes.add(code(one.tag(), one.id())));
        return codes;
    }

    private static String code(@Nullable String tag, UUID id) {
        return tag == null ? id.toString() : tag;
    }

    private static String shown(String text) {
        return Printed.squeezed(text).replaceAll("\\p{IsHan}", "□");
    }
}
