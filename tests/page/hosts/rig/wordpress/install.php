<?php
// Makes the tables, and one person of each kind: an admin may write any markup, an author may not.

define('WP_INSTALLING', true);

$database = new mysqli('localhost', 'root', '', '', 0, getenv('BLOG_SOCKET'));
$database->query('CREATE DATABASE blog CHARACTER SET utf8mb4');

require __DIR__ . '/wp-load.php';
require ABSPATH . 'wp-admin/includes/upgrade.php';

// Neither a welcome by mail nor posts that nobody wrote.
function wp_new_blog_notification() {}
function wp_install_defaults() {}

wp_install('Below the Lock', 'admin', 'keeper@farthing.invalid', false, '', wp_generate_password());
wp_insert_user([
    'user_login' => 'author',
    'user_email' => 'author@farthing.invalid',
    'user_pass' => wp_generate_password(),
    'role' => 'author',
]);
