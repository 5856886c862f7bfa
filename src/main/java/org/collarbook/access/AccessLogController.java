package org.collarbook.access;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Access")
class AccessLogController {

    private final AccessLog lines;

    AccessLogController(AccessLog lines) {
        this.lines = lines;
    }

    @GetMapping(path = "/api/access-log", produces = "application/json")
    @Operation(summary = "Who asked for which change, and who was denied, the latest first")
    Page<AccessLog.Line> lines(@RequestParam(required = false) @Nullable UUID caller,
            @RequestParam(required = false) @Nullable String method,
            @RequestParam(required = false) @Nullable String endpoint,
            @RequestParam(required = false) @Nullable Boolean denied,
            @RequestParam(required = false) @Nullable Instant from,
            @RequestParam(required = false) @Nullable Instant before,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var asked = PageSize.of(size);
        var read = lines.page(new AccessLog.Filter(caller, method, endpoint, denied, from, before),
                Cursor.parseNumber(cursor),
                asked);
        return Page.of(read, asked, line -> Cursor.after(line.number()));
    }
}
