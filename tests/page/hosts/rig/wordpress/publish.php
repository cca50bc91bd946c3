<?php
// Publishes a post as a person would through the editor, and tells what WordPress made of it.

require __DIR__ . '/wp-load.php';

$post = json_decode(file_get_contents('php://stdin'), true, 8, JSON_THROW_ON_ERROR);
$person = get_user_by('login', $post['by']);
wp_set_current_user($person->ID);
$id = wp_insert_post(wp_slash([
    'post_status' => 'publish',
    'post_title' => $post['title'],
    'post_content' => $post['content'],
    'post_author' => $person->ID,
]), true);
if (is_wp_error($id)) {
    fwrite(STDERR, $id->get_error_message());
    exit(1);
}
echo json_encode([
    'address' => get_permalink($id),
    'kept' => get_post($id)->post_content,
    'isUnfiltered' => current_user_can('unfiltered_html'),
]);
