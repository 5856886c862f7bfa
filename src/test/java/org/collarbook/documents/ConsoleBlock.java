package org.collarbook.documents;

import java.util.ArrayList;
import java.util.List;

/** One command of a {@code console} block of a document, and the output that the document shows for it. */
record ConsoleBlock(int line, String command, String shown) {

    /** A command begins with {@code $ } and goes on while its lines end in a backslash or a quote or a here-document stands open. */
    static List<ConsoleBlock> in(List<String> document) {
        var blocks = new ArrayList<ConsoleBlock>();
        boolean inside = false;
        for (int i = 0; i < document.size(); i++) {
            var line = document.get(i);
            if (line.startsWith("```")) {
                inside = line.equals("```console");
            } else if (inside && line.startsWith("$ ")) {
                var command = new StringBuilder(line.substring(2));
                int at = i + 1;
                while (isOpen(command)) {
                    command.append('\n').append(document.get(++i));
                }
                var shown = new StringBuilder();
                while (!document.get(i + 1).startsWith("$ ") && !document.get(i + 1).startsWith("```")) {
                    shown.append(document.get(++i)).append('\n');
                }
                blocks.add(new ConsoleBlock(at, command.toString(), shown.toString().strip()));
            }
        }
        return blocks;
    }

    private static boolean isOpen(CharSequence command) {
        var text = command.toString();
        return text.endsWith("\\") || text.contains("<<'END'") && !text.endsWith("\nEND")
                || text.chars().filter(c -> c == '\'').count() % 2 == 1;
    }
}
