package org.collarbook.schedule.packet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;

import tools.jackson.databind.JsonNode;

/** A packet as PDFBox, which did not write it, reads it off the page: without white space, case and underscores. */
record PacketOnPaper(List<String> pages) {

    /** What the paper leaves out or says another way: links and days of citations, what repeats the container itself. */
    private static final Set<String> NOT_PRINTED = Set.of("url", "retrieved", "lastConfirmed", "published",
            "inForceFrom", "containerId", "version", "checks", "latitude", "longitude", "takesBack", "fillId",
            "subject", "declarationId", "customerId", "siteId", "ruleBook", "gallonsAdded", "heelLb", "addedLb",
            "tareLb",
            "liquidTemperatureF", "product", "specificGravity", "observedOverfill", "toldAfterwards", "tank");

    private static final String THE_REGISTER = "00000000-0000-0000-0000-000000000000";

    static PacketOnPaper read(byte[] file) {
        try (var document = Loader.loadPDF(file)) {
            var pages = new ArrayList<String>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                var stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(squeezed(stripper.getText(document)));
            }
            return new PacketOnPaper(pages);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String squeezed(String text) {
        return text.replaceAll("[\\s\\u00a0_]+", "").toLowerCase(Locale.ROOT);
    }

    String text() {
        return String.join("", pages);
    }

    /** Each value of the answer that is a text or a number, as it must stand on paper. */
    static List<String> facts(JsonNode answer) {
        var facts = new ArrayList<String>();
        gather(answer, facts);
        return facts.stream().distinct().filter(fact -> !fact.equals(THE_REGISTER)).toList();
    }

    private static void gather(JsonNode node, List<String> facts) {
        if (node.isObject()) {
            node.properties().forEach(field -> {
                if (!NOT_PRINTED.contains(field.getKey())) {
                    gather(field.getValue(), facts);
                }
            });
        } else if (node.isArray()) {
            node.forEach(one -> gather(one, facts));
        } else if (node.isString() || node.isNumber()) {
            facts.add(squeezed(moment(node.asString())));
        }
    }

    private static String moment(String text) {
        try {
            return PacketWords.moment(Instant.parse(text));
        } catch (DateTimeException _) {
            return text;
        }
    }
}
