package org.collarbook.custody;

import java.util.Optional;
import java.util.UUID;

import org.springframework.data.repository.Repository;

interface Customers extends Repository<Customer, UUID> {

    Customer saveAndFlush(Customer customer);

    Optional<Customer> findById(UUID id);
}
