package org.collarbook.portal;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Caution;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@RestController
@Tag(name = "Portal")
class PortalController {

    private static final String NOT_CHANGED = "Not changed since the ETag named in If-None-Match";

    private final PortalContainers containers;
    private final PortalChanges changes;
    private final SinceTokens tokens;
    private final JsonMapper json;

    PortalController(PortalContainers containers, PortalChanges changes, SinceTokens tokens, JsonMapper json) {
        this.containers = containers;
        this.changes = changes;
        this.tokens = tokens;
        this.json = json;
    }

    /** For the document: a page as served; {@code removed} is there with {@code since} alone. */
    record PortalPage(List<PortalContainer> items, @Nullable List<UUID> removed, @Nullable String next,
            String caution) {}

    private record Sparse(List<JsonNode> items, @Nullable List<UUID> removed, @Nullable String next, String caution) {}

    /** For the document: a container as served. */
    record PortalContainerAnswer(PortalContainer container, String caution) {}

    private record SparseContainer(JsonNode container, String caution) {}

    @GetMapping(path = "/api/portal/containers", produces = "application/json")
    @Operation(summary = "The customer's containers by pages, or what changed since an earlier answer", description = """
            The first page has a `Since-Token` header: hand it back as `since` to get the containers that are new or \
            changed since, and in `removed` the ids of those that are here no more. `Link` has the next and the first \
            page. Answers 304 to If-None-Match. A page of changes may be short, or empty, and still have a next.""")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalPage.class)))
    @ApiResponse(responseCode = "304", description = NOT_CHANGED)
    @Nullable
    ResponseEntity<byte[]> containers(@ParameterObject PortalQuestion question, CustomerScope scope, Inputs wrong,
            HttpServletRequest request, HttpServletResponse response) {
        var asked = question.read(scope, wrong);
        var served = new Served(request, response, json);
        return asked.since() == null
                ? all(asked, scope, served)
                : changed(asked, asked.since(), scope, served);
    }

    private @Nullable ResponseEntity<byte[]> all(PortalQuestion.Read asked, CustomerScope scope, Served served) {
        var listed = containers.page(scope, asked.customer(), asked.filter(), asked.after(), asked.size());
        var page = Page.of(listed.read(), asked.size(), container -> Cursor.after(container.id()));
        var whole = asked.filter().isAll() && asked.after() == null;
        return served.linking(page.next()).since(whole ? tokens.seal(listed.since(), scope, asked.customer()) : null)
                .body(new Sparse(sparse(page.items(), asked.fields()), null, page.next(), Caution.TEXT), null);
    }

    private @Nullable ResponseEntity<byte[]> changed(PortalQuestion.Read asked, String since, CustomerScope scope,
            Served served) {
        var before = tokens.open(since, scope, asked.customer());
        var changed = changes.since(scope, asked.customer(), before, asked.after(), asked.size());
        var next = changed.last() == null ? null : Cursor.after(changed.last()).toString();
        return served.linking(next)
                .since(asked.after() == null ? tokens.seal(changed.since(), scope, asked.customer()) : null)
                .body(new Sparse(sparse(changed.items(), asked.fields()), changed.removed(), next, Caution.TEXT), null);
    }

    private List<JsonNode> sparse(List<PortalContainer> items, Fields fields) {
        return items.stream().map(item -> fields.of(item, json)).toList();
    }

    @GetMapping(path = "/api/portal/containers/{id}", produces = "application/json")
    @Operation(summary = "One of the customer's containers; answers 304 to If-None-Match and If-Modified-Since")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalContainerAnswer.class)))
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag or date named")
    @Nullable
    ResponseEntity<byte[]> container(@PathVariable UUID id, @RequestParam(required = false) @Nullable String customer,
            @RequestParam(required = false) @Nullable String fields, CustomerScope scope, Inputs wrong,
            HttpServletRequest request,
            HttpServletResponse response) {
        var whose = PortalQuestion.customer(scope, customer, wrong);
        var asked = Fields.read(fields, wrong);
        wrong.done();
        if (whose == null || asked == null) {
            throw new IllegalStateException("a question was neither read nor refused");
        }
        var one = containers.one(scope, whose, id);
        return new Served(request, response, json).body(
                new SparseContainer(asked.of(one.container(), json), Caution.TEXT), one.lastModified());
    }

    @GetMapping(path = "/api/customers/{id}/containers", produces = "application/json")
    @Operation(summary = "A customer's containers as that customer's portal reads them; answers 304 to If-None-Match")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalPage.class)))
    @ApiResponse(responseCode = "304", description = NOT_CHANGED)
    @Nullable
    ResponseEntity<byte[]> forStaff(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size, CustomerScope scope, HttpServletRequest request,
            HttpServletResponse response) {
        var rows = PageSize.of(size);
        var listed = containers.page(scope, new CustomerId(id), PortalFilter.ALL, Cursor.parseId(cursor), rows);
        var page = Page.of(listed.read(), rows, container -> Cursor.after(container.id()));
        return new Served(request, response, json).linking(page.next())
                .body(new PortalPage(page.items(), null, page.next(), Caution.TEXT), null);
    }
}
