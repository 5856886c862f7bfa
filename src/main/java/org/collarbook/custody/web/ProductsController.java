package org.collarbook.custody.web;

import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Product;
import org.collarbook.custody.Products;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/products", produces = "application/json")
@Tag(name = "Fills")
class ProductsController {

    private final Products products;
    private final Idempotency idempotency;
    private final Clock clock;

    ProductsController(Products products, Idempotency idempotency, Clock clock) {
        this.products = products;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Declare a product that is filled in", description = """
            `specificGravity` is of the liquid at 60 °F, as a named person declares it. A fill check or a fill that \
            names the product's `code` takes the gravity from here.""")
    ResponseEntity<?> declare(@RequestBody ProductRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toContent(latestDay());
        return idempotency.once(key, caller.id(), "POST /api/products", request, () -> {
            var product = products.declare(content);
            return answer(ResponseEntity.created(URI.create("/api/products/" + product.id())), product);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One product")
    ResponseEntity<ProductResponse> one(@PathVariable UUID id) {
        return answer(ResponseEntity.ok(),
                products.find(id).orElseThrow(() -> Problem.notFound("product").asException()));
    }

    @GetMapping
    @Operation(summary = "Products, by pages")
    Page<ProductResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return products.page(Cursor.parseId(cursor), PageSize.of(size))
                .map(rows -> rows.stream().map(ProductResponse::from).toList());
    }

    @PutMapping("/{id}")
    @Operation(summary = "Declare a product anew; fills recorded before keep the gravity they were judged with")
    ResponseEntity<ProductResponse> change(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody ProductRequest request) {
        return answer(ResponseEntity.ok(), products.change(id, ifMatch, request.toContent(latestDay())));
    }

    /** A day that has begun somewhere on earth: where the declarer sits is not known here. */
    private LocalDate latestDay() {
        return LocalDate.now(clock.withZone(ZoneOffset.ofHours(14)));
    }

    private static ResponseEntity<ProductResponse> answer(ResponseEntity.BodyBuilder to, Product product) {
        return to.eTag(new Revision(product.version()).etag()).body(ProductResponse.from(product));
    }
}
