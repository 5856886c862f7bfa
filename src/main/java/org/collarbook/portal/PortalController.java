package org.collarbook.portal;

import java.util.HexFormat;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import tools.jackson.databind.json.JsonMapper;

@RestController
@Tag(name = "Portal")
class PortalController {

    private final PortalContainers containers;
    private final JsonMapper json;

    PortalController(PortalContainers containers, JsonMapper json) {
        this.containers = containers;
        this.json = json;
    }

    /** For the document: the page as served. */
    record PortalPage(List<PortalContainer> items, @Nullable String next) {}

    @GetMapping(path = "/api/customers/{id}/containers", produces = "application/json")
    @Operation(summary = "A customer's containers with their status, due month and reasons; answers 304 to If-None-Match")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalPage.class)))
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match")
    @Nullable
    ResponseEntity<byte[]> containers(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size, CustomerScope scope, WebRequest request) {
        var asked = PageSize.of(size);
        var read = containers.page(scope, new CustomerId(id), Cursor.parseId(cursor), asked);
        var page = Page.of(read, asked, container -> Cursor.after(container.id()));
        var body = json.writeValueAsBytes(page);
        // a strong tag: equal tags are equal bytes
        var etag = "\"" + HexFormat.of().formatHex(Sha256.of(body), 0, 16) + "\"";
        if (request.checkNotModified(etag)) {
            return null;
        }
        // private: a shared cache must not hold one customer's list for another
        return ResponseEntity.ok().eTag(etag).cacheControl(CacheControl.noCache().cachePrivate())
                .contentType(MediaType.APPLICATION_JSON).body(body);
    }
}
