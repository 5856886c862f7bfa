package org.collarbook.custody;

import java.util.Optional;
import java.util.UUID;

import org.springframework.data.repository.Repository;

interface Sites extends Repository<Site, UUID> {

    Site saveAndFlush(Site site);

    Optional<Site> findById(UUID id);
}
