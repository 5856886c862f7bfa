package org.collarbook.registry;

import java.util.Optional;
import java.util.UUID;

import org.springframework.data.repository.Repository;

interface StoredContainers extends Repository<Container, UUID> {

    Container saveAndFlush(Container container);

    Optional<Container> findById(UUID id);
}
